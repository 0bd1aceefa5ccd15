# Lo que se dice de los días de pintura, y los nombres de tareas, pasos y motivos.
crew-nobody = No se indica quién pinta.
crew-name-people = Indique cuántas personas vienen.
crew-too-many = { $count } personas no pueden pintar un solo patio.
crew-no-window = No se dan horas para pintar.
crew-name-window = Indique para cada día desde cuándo y hasta cuándo está libre el patio con tiempo adecuado.
crew-windows-mixed = Las horas de los días se solapan, van al revés o están desordenadas.
crew-order-windows = Dé cada día una vez, el primero delante.
crew-window-too-short = { $count ->
    [one] Un tramo de horas es demasiado corto
   *[other] { $count } tramos de horas son demasiado cortos
}: solo limpiar lleva { $minutes } minutos.
crew-stencil-unknown = { $marking } pide una plantilla que no existe.
crew-no-quantity = { $marking } tiene una superficie o una longitud imposible.
crew-too-few = Algunas tareas piden { $need } personas a la vez, y { $have ->
    [one] viene una
   *[other] vienen { $have }
}.
crew-find-more = Busque a alguien que eche una mano en ellas.
crew-task-too-long = Una tarea en { $marking } lleva { $minutes } minutos y no cabe en ningún tramo de horas.
crew-longer-day = Alargue el día o divida la marca.
crew-no-plan = El trabajo no cabe en los días, ni con todos los que se pueden añadir.
crew-more-days = { $count ->
    [one] Hace falta un día más como el último
   *[other] Hacen falta { $count } días más como el último
}.
crew-more-hands = Más personas, u otra plantilla de las que se esperan, pueden ahorrarlo.
crew-children-too-early = Los niños vuelven { $hours } h antes de que la pintura esté seca para ellos.
crew-rope-off = Acordone las marcas y deje a alguien de guardia hasta entonces.
crew-no-ground = No se ha mirado si la salida queda libre: no se conocen el suelo o sus puertas.
crew-name-ground = Recorra el patio con el plano en la mano antes de empezar y acuerden la salida.
crew-no-way = Ningún paso lleva de { $marking } a una puerta.
crew-paint-backwards = Pinte hacia atrás, hacia suelo del que se pueda salir, y deje a alguien de guardia.
crew-way-closed = Mientras { $marking } está húmeda, el paso de { $from } a { $to } queda cerrado.
crew-half-at-a-time = Pinte la mitad cada vez, o señale otro paso. No cierre nunca una vía de evacuación.
crew-kind-sweep = barrer y lavar
crew-kind-prime = imprimar
crew-kind-set-out = replantear
crew-kind-mask = enmascarar
crew-kind-coat = capa
crew-kind-clean = limpiar
crew-step-place = colocar y fijar la plantilla
crew-step-edge = recortar los bordes
crew-step-roll = pasar el rodillo
crew-step-lift = levantar y limpiar la plantilla
crew-step-pull = quitar la cinta
crew-why-order = va después
crew-why-drying = hasta que seque
crew-why-beside = pintura húmeda al lado
crew-why-people = hasta que haya gente libre
crew-why-tapes = hasta que las cintas estén libres
crew-why-stencil = hasta que la plantilla esté libre
crew-why-way-out = la pintura húmeda cierra la salida
