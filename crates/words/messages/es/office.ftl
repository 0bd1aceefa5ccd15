# Papeles para la oficina: permiso, riesgos, carta a las familias, mantenimiento.
page-kind-office = papeles para la oficina
office-leave-title = { $name }: permiso para pintar
office-leave-asks = Pedimos al dueño del terreno permiso para pintar { $markings ->
    [one] una marca de juego
   *[other] { $markings } marcas de juego
 } en el patio de { $name }. El plano muestra dónde va cada una.
office-column-colours = colores
office-column-painted = pintado, { $unit }²
office-leave-how = Cómo se hace
office-leave-paint = Usamos pintura de marcado al agua, hecha para suelos exteriores, con arena fina y redondeada en la última mano. Su etiqueta y su hoja de seguridad se guardan con este papel.
office-leave-open = Puertas, portones, salidas de emergencia y caminos accesibles quedan abiertos mientras pintamos y después.
office-leave-not-on = No se pinta sobre suelo de caucho, desagües, tapas, hidrantes ni señales de tráfico.
office-leave-keep = Revisamos la pintura cada mes y dejamos de usar una marca cuando se levanta o resbala.
office-leave-remove = Cuando ya no se quiera, la desgastamos o la cubrimos con el color del suelo. Nunca quemamos ni lijamos pintura vieja.
office-leave-needs = Antes de la primera mano
office-tick-owner = El dueño, y quien alquila el terreno, están de acuerdo por escrito.
office-tick-others = Lo saben todos los que usan o reparan el suelo.
office-tick-surface = El suelo se puede pintar: se conocen su edad, su sellador y la pintura vieja. La pintura vieja se analizó por si tiene plomo.
office-tick-routes = Los bomberos o la oficina de licencias han visto el plano donde la ley lo pide.
office-tick-insurer = El seguro está avisado.
office-tick-licence = Se consultaron las normas locales de colores, acceso y áreas de juego.
office-product = Pintura, marca y producto
office-repairs = Quién la repara
office-from = Desde
office-until = Hasta
office-owner = Dueño
office-signed = Firma
office-date = Fecha
office-risk-title = { $name }: ventajas y riesgos
office-risk-benefit = Se gana: { $children ->
    [one] un niño practica
   *[other] { $children } niños practican
 } salto, pata coja, zancada, galope, paso lateral y salto alternado en { $markings ->
    [one] una marca
   *[other] { $markings } marcas
 } hechas a su medida. El plan da el { $share } % de la práctica que se quiere para ellos.
office-risk-how = Algo de riesgo es parte del juego: los niños aprenden de él. Esta hoja busca el daño que no enseña nada. Viene llena con lo que dice el plan. Recorra el patio con ella, corríjala y puntúe cada línea antes y después de lo que se hace.
office-column-hazard = qué puede salir mal
office-column-here = en este patio
office-column-control = qué hacemos
office-column-before = antes
office-column-after = después
office-risk-scale = Puntos: cuán probable (1 casi nunca, 5 a menudo) por cuán grave (1 un raspón, 5 para toda la vida). No abra una marca que después tenga 10 puntos o más.
office-risk-more = Qué más hay
office-filled-by = Llenado por
office-review = Revisar el
office-care-law = Esta hoja es una ayuda y no un certificado. Primero van los códigos locales, las normas de licencia y las hojas de los fabricantes.
office-care-ask = Pregunte a un profesional autorizado donde se exija.
office-hazard-fast = Pies rápidos: chocan entre sí, con un muro o un portón
office-hazard-equipment = Un niño entra en la zona de un columpio o de un tobogán
office-hazard-trip = Tropiezan con un borde, un desagüe o una grieta
office-hazard-sight = Nadie ve a un niño que necesita ayuda
office-hazard-ways = Una salida queda tapada
office-hazard-wet = La pintura mojada resbala
office-hazard-heat = Sol, calor, suelo caliente
office-hazard-crowd = Demasiados a la vez
office-hazard-cars = Coches o repartos en el patio
office-hazard-work = El día de pintar: vapores, cuchillas, polvo, pintura fresca
office-here-lanes = { $count ->
    [0] Ningún carril.
    [one] Un carril: { $lanes }.
   *[other] { $count } marcas con carriles: { $lanes }.
 }
office-here-equipment = { $count ->
    [0] Ningún equipo de juego.
   *[other] { $fixtures }.
 }
office-here-drains = { $count ->
    [0] No se midió ningún desagüe ni tapa.
   *[other] { $fixtures }.
 }
office-here-ways = { $doors ->
    [one] Una puerta
   *[other] { $doors } puertas
 }, { $gates ->
    [one] un portón
   *[other] { $gates } portones
 }, { $routes ->
    [one] un camino abierto
   *[other] { $routes } caminos abiertos
 }.
office-here-rules = { $checks ->
    [0] { "" }
    [one] { $off ->
        [0] Se cumple la única comprobación del plan.
       *[other] No se cumple la única comprobación del plan: vea la auditoría.
    }
   *[other] { $off ->
        [0] Se cumplen las { $checks } comprobaciones del plan.
        [one] No se cumple una de las { $checks } comprobaciones del plan: vea la auditoría.
       *[other] No se cumplen { $off } de las { $checks } comprobaciones del plan: vea la auditoría.
    }
 }
office-here-look = Hay que verlo en el patio.
office-here-crowd = { $out ->
    [one] Sale un niño
   *[other] Salen como mucho { $out } niños
 } a la vez.
office-here-work = Las hojas del día dicen quién hace qué.
office-control-fast = Todos van en el mismo sentido. Se espera fuera del carril. El final queda libre. Un adulto está donde termina el carril.
office-control-equipment = No se pinta en las zonas libres. Los columpios no se usan mientras se usa una marca a su lado. Revise otra vez si se mueve el equipo.
office-control-trip = Barrer y reparar antes bordes y grietas. Ningún apoyo cerca de un desagüe.
office-control-sight = El adulto está en el sitio marcado y ve a todos. Si no hay sitio: esa marca no se usa en juego libre.
office-control-ways = Quien espera está fuera del paso. No hay nada en medio.
office-control-wet = Arena fina en la última mano. Probar en mojado antes de usarla y cada estación. Cerrada si está mojada, helada o con musgo.
office-control-heat = La mano en la pintura cinco segundos. Sombra, gorras, agua. La hoja del tiempo dice cuándo quedarse dentro.
office-control-crowd = Grupos de cuatro por marca, de dos en dos si tiene dos vías. Nadie espera más de 15 segundos.
office-control-cars = Portón cerrado, conos, una persona vigila. No se juega mientras se mueve un vehículo.
office-control-work = Ningún niño en el patio hasta que la pintura esté dura. Guantes, ojos cubiertos, aire fresco. Las cuchillas son de adultos. Lavarse las manos.
office-letter-title = Nuevos caminos para jugar en { $name }
office-letter-what = Queridas familias: vamos a pintar figuras y caminos en el suelo de nuestro patio. Los niños van a saltar, ir a la pata coja, galopar y andar de lado sobre ellos.
office-letter-why = A esta edad les encanta moverse, y aprenden mejor cuando un adulto juega con ellos. Cada figura está hecha a la medida de este grupo.
office-letter-when = Jugamos allí { $sessions ->
    [one] una vez por semana
   *[other] { $sessions } veces por semana
 }, { $minutes } minutos, en grupos pequeños. Nadie está obligado. Quien no quiere puede mirar o jugar a otra cosa.
office-letter-bring = Manden, por favor, zapatos que no se salgan ni resbalen, gorra para el sol, una botella de agua y ropa que se pueda ensuciar. El aire fresco no enferma: basta una chaqueta.
office-letter-watch = Al correr un niño puede caerse, como en cualquier sitio. Tenemos el suelo limpio, revisamos la pintura cada mes y nos quedamos dentro si hace mucho calor o frío, si está mojado o si hay humo.
office-letter-leave = ¿Nos dan permiso?
office-letter-leave-how = Su hijo juega en los caminos en todo caso. Para lo demás les preguntamos. Lo que no marquen, no lo hacemos.
office-consent-checks = Pueden anotar qué movimientos sabe hacer. Allí tiene un código, nunca un nombre.
office-consent-monitor = Puede llevar algunos días un cinturón pequeño que mide el movimiento.
office-consent-photo-learning = Pueden hacerle fotos para enseñar al personal. No salen de la casa.
office-consent-photo-print = Pueden imprimir o publicar fotos suyas.
office-consent-keep = Pueden guardar las notas, sin nombre, cuando ya no venga.
office-letter-stop = Pueden cambiar de idea cualquier día: nos lo dicen, paramos y borramos lo que tenemos.
office-code = Código
office-contact = Su contacto aquí
office-telephone = Teléfono
office-log-title = { $name }: cuidar la pintura
office-log-when = Quién mira:
office-log-month = Cada mes: una vuelta de dos minutos.
office-log-half = Cada seis meses: puntuar cada marca aquí abajo. Hacer la foto desde el mismo sitio, sin niños.
office-log-winter = Después del invierno, y si alguien ha cavado, conducido o limpiado allí: puntuar otra vez.
office-log-close = Cierre enseguida una marca que resbala en mojado o que se levanta donde caen los pies.
office-log-refresh = Pinte de nuevo cuando quede menos del 70 %, cuando se distinga poco del suelo o cuando un borde se levante más de 5 mm.
office-log-years = Los pies gastan la pintura: unos { $months } meses después queda el 70 %. { $known ->
    [yes] Pintar y refrescar cuesta unos { $cost } al año en { $years } años, con los precios conocidos.
   *[no] Faltan precios, así que nadie puede decir cuánto cuesta un año.
 }
office-log-look = Puntos
office-log-score = 0 bien, 1 algo gastada, 2 reparar esta temporada, 3 cerrar ya. Se ve a 6 m; bordes nítidos; nada se levanta; agarra en mojado; sin grietas.
office-column-seen = se ve
office-column-edges = bordes
office-column-lifts = levanta
office-column-grip = agarre
office-column-cracks = grietas
office-column-do = por hacer
office-log-done = Lo que se hizo
office-column-done = qué se hizo, color, manos
office-column-who = quién
