# Papeles para el personal: tarjetas, semanas, lista de bolsillo, el tiempo del día.
page-kind-cards = tarjetas de juego
page-kind-weeks = las semanas de juego
card-how = Cómo se juega
card-easier = Más fácil
card-harder = Más difícil
card-link = En la sala
card-need = Hace falta
card-children = Niños
card-things = { $count ->
    [0] la figura, piso seco
   *[other] { $things }, piso seco
 }
card-group = de { $least } a { $most }, de { $from } a { $to } años
card-years = { $age } años
card-legend = De los niños de una edad: lleno a su medida, punteado muy fácil, rayado fuera de alcance; corchete: intervalo del 90 %.
weeks-title = { $name }: las semanas de juego
weeks-told = { $weeks ->
    [one] Una semana
   *[other] { $weeks } semanas
 }{ $known ->
    [yes] , desde el { $starts }
   *[no] { "" }
 }. Cada sesión tiene calentamiento, { $slots ->
    [one] un turno
   *[other] { $slots } turnos
 } de { $minutes } minutos en las estaciones y un final tranquilo. Así reciben { $value } de 100 de la práctica que se quiere para ellos. Ningún otro plan con estos turnos es más de { $gap } % mejor.
weeks-how-warm = Calienten en una figura, todos juntos. Muestre una vez el movimiento del día.
weeks-how-show = Muestre y luego diga. Una sola consigna, dos veces. Diga qué salió bien.
weeks-how-free = El niño que no está en un grupo juega libre a la vista. El que no quiere puede mirar: también es una respuesta.
weeks-how-lost = Si una sesión se pierde por lluvia, anote su semana y número en lost.csv y haga el plan otra vez. Cambian las semanas que vienen; lo hecho queda.
weeks-how-broken = Si una estación se rompe o alguien se lastima allí: ciérrela, mande el grupo al juego libre y anótelo en lost.csv.
weeks-how-short = Si falta un adulto: jueguen una estación menos, la que él vigilaba.
weeks-care-ground = Mire antes el suelo. No se juega sobre pintura mojada, helada o caliente.
weeks-care-sight = Quédese donde ve a todos. Un carril rápido necesita un adulto al final.
weeks-care-heat = Agua, sombra y gorras con calor. Adentro con truenos, humo o mucho frío. Primero van las normas locales.
weeks-waiting = Cuánto esperan
weeks-waiting-how = Segundos antes de un turno, en { $runs } simulaciones del plan entero, con intentos fallidos y niños que se distraen.
weeks-column-mean = media
weeks-column-longest = la mayor
weeks-week = Semana { $week }
weeks-turn = { $session }, grupo { $turn }
weeks-lost = no se hizo
weeks-column-session = sesión
weeks-column-slot = turno
weeks-forms = Quién juega qué forma
weeks-forms-how = Quien no está en ninguna lista juega como dice la tarjeta. Cambie la forma en cuanto vea que no le queda.
weeks-column-wheels = con ruedas
weeks-gets = Qué recibe cada niño
weeks-gets-how = Porcentaje de la práctica deseada en todas las semanas, por movimiento. Apoyos y minutos en movimiento salen de las sesiones simuladas, con lo que varían de una a otra.
weeks-column-child = niño
weeks-column-contacts = buenos apoyos
weeks-column-active = minutos activos
weeks-missed = Qué falta, y por qué
weeks-why = { $skill }: { $who }: { $why }
weeks-why-no-time = no queda tiempo para estaciones
weeks-why-no-station = ninguna figura les queda aún; jueguen la forma fácil al calentar
weeks-why-never-opens = lo que va antes no llega en estas semanas
weeks-why-opens-late = se abre tarde, después de lo que necesita
weeks-why-stations = las figuras cansarían antes
weeks-why-lost = se perdieron sesiones
weeks-why-full = las estaciones están llenas
weeks-why-time = otros movimientos necesitan más los minutos
pocket-title = Consignas de bolsillo
pocket-how = Mire una cosa. Diga una consigna. Espere dos intentos antes de decir otra.
pocket-everyone = todos
pocket-see = se ve
pocket-say = se dice o se hace
fit-title = Salir, sombra o adentro
fit-how = Mire antes de cada sesión. Cuenta la peor luz de las cuatro.
fit-year = En un año típico en { $place }, unas { $expected } de { $planned } sesiones planeadas caen en una hora buena para jugar. { $known ->
    [yes] { $spare ->
        [0] No hacen falta de reserva.
        [one] Planee una más de reserva.
       *[other] Planee { $spare } más de reserva.
    }
   *[no] Hay tan pocas horas buenas que las de reserva no ayudan: elija otra hora u otra estación.
 }
fit-column-light = luz
fit-column-heat = índice de calor, °{ $unit }
fit-column-chill = sensación de frío, °{ $unit }
fit-column-air = aire
fit-column-uv = UV
fit-column-do = qué hacer
fit-under = menos de { $value }
fit-from = { $low } o más
fit-between = { $low } a { $high }
fit-instead = Adentro, en cambio
fit-instead-tape = Pegue un arroyo o una fila de puntos con cinta en el piso. Con zapatos, sin medias.
fit-instead-small = Jueguen la forma pequeña: pata coja en el sitio, galope alrededor de la mesa, palmas largo y corto.
fit-instead-link = Hagan el enlace de sala de la tarjeta de hoy.
