# El patio
yard-no-place = No se pueden situar las esquinas del patio.
yard-no-area = El contorno no encierra ningún suelo.
yard-crosses-itself = El contorno se cruza a sí mismo.
yard-check-readings = Revise las medidas del contorno.
yard-check-order = Revise el orden de los puntos en boundary: una vuelta al patio, ninguna esquina dos veces.
place-outside = { $name } queda muy lejos del patio.
radius-odd = { $name } tiene un radio de { $radius }; no puede ser.
outline-crosses-itself = El contorno de { $name } se cruza a sí mismo. Se toma todo el suelo entre sus esquinas exteriores.
outline-check-order = Nombre las esquinas en el orden de una vuelta.
fixture-outside-yard = { $name } queda { $off } fuera del patio.
fixture-check-points = Revise las medidas de sus puntos.

# Zonas libres
zone-from-memory = La zona libre de { $fixture } se apoya en una cifra de memoria.
zone-use-makers-sheet = Ponga la cifra de la hoja del fabricante en [figures] de project.toml.
zone-height-unknown = { $fixture } no tiene altura. Se toma { $taken }, por seguridad.
zone-tell-height = Mida la altura de caída o de la plataforma y añada height.
zone-measure-odd = { $fixture } tiene una medida de { $measure }; no se usa.
zone-measure-between = entre nada y { $most }
zone-no-rule = Ninguna regla cubre { $fixture }. Recibe la zona más ancha, { $taken }.
zone-name-kind = Diga qué es, si es de una clase conocida.
fall-too-high = { $fixture } tiene una caída de { $height }.
fall-at-most = La norma europea permite como máximo { $most }.
fall-ask-inspector = Pregunte a un inspector de juegos antes de que lo usen los niños.
slide-exit-unknown = { $fixture } no tiene salida. La zona de salida queda libre por todos los lados.
slide-tell-exit = Añada exit con los dos puntos al pie de la rampa.
swing-pivot-unknown = No se conoce el eje de { $fixture }. Se toma a { $taken } de altura.
swing-tell-pivot = Mida del suelo al eje y añada pivot.
swing-seat-unknown = No se conoce la altura del asiento de { $fixture }. La zona se traza desde el suelo, por seguridad.
swing-tell-seat = Mida del suelo a lo alto del asiento y añada seat_top.
swing-members-unknown = No se conocen los tirantes de { $fixture }. Se toman de { $taken } de largo.
swing-tell-members = Mida del eje al neumático y añada members.

# Vecinos
zones-overlap = Las zonas libres de { $first } y { $second } comparten { $area }.
zones-never-shared = El recorrido de un columpio, la salida de un tobogán y el suelo alrededor de lo que gira nunca se comparten.
zones-move-apart = Pregunte a un inspector de juegos cuál debe moverse.
equipment-too-near = { $first } y { $second } están a { $distance }.
equipment-apart = Al menos { $wanted }: 6 pies si ambas superficies de juego tienen como máximo 30 pulgadas de alto; si no, 9 pies.
zone-obstructed = { $thing } está en la zona libre de { $fixture }, a { $distance }.
zone-cut-by-edge = { $edge ->
    [wall] Un muro
    [fence] Una valla
    [hedge] Un seto
    [kerb] Un bordillo
    [drop] Un desnivel
   *[other] Un borde
} corta la zona libre de { $fixture }, a { $distance }.
zone-clear = Nada más en una zona libre; edificios y otras estructuras al menos a { $gap }.
equipment-on-hard-ground = { $fixture } está sobre suelo duro ({ $surface ->
    [asphalt] asfalto
    [concrete] hormigón
    [paving] adoquín
    [old-paint] pintura vieja
   *[other] sellador
}).
equipment-ask-inspector = Los juegos necesitan un suelo que amortigüe la caída. Pregunte a un inspector de juegos antes de que los usen los niños.

# Superficies
surface-assumed = No se indica ninguna superficie. Todo, { $area }, se toma por asfalto en buen estado.
surface-assumed-rest = No se indica la superficie de { $area }. Se toma por asfalto en buen estado.
surface-tell = Añada una superficie para cada trozo de suelo.
surface-unless-maker-agrees = No se pinta sobre { $surface ->
    [rubber] caucho
    [mulch] mantillo ligado
   *[other] moqueta
} sin permiso escrito del fabricante: la pintura puede endurecerlo.
surface-with-care = El adoquín admite pintura, con cuidado.
surface-mind-joints = Las juntas se mueven y se notan. Aparte las líneas de ellas si puede.
surface-test-first = Hay pintura vieja en el suelo.
surface-test-lead = Hágala analizar antes por plomo y cromato. No la lije, esmerile ni queme.
surface-ask-maker = El suelo está sellado; la pintura acrílica puede no agarrar.
surface-try-patch = Pregunte al fabricante del sellador y pruebe en un trozo pequeño.
surface-too-young = El { $surface ->
    [asphalt] asfalto
   *[other] hormigón
} es demasiado nuevo para pintar: { $left ->
    [one] falta un día
   *[other] faltan { $left } días
}.
surface-cured = Al menos { $days } días después de colocarlo.
surface-wait = { $left ->
    [one] Pinte mañana
   *[other] Pinte dentro de { $left } días
} o más tarde, y ponga ese día en date de project.toml.
surface-spalled = Parte del suelo está desconchado; no se pinta.
surface-repair = Hágalo reparar y mida de nuevo.
surface-cracked = Parte del suelo está agrietado.
surface-fill-cracks = Rellene grietas de más de 10 mm y escalones de más de 6 mm, o no ponga marcas sobre ellos.
remark-old-paint = Hay pintura vieja en el suelo.

# Puertas y pasos
door-no-width = { $door } no tiene ancho; se omite.
door-side-unclear = No está claro de qué lado de { $door } queda el patio. Ambos lados quedan libres.
door-put-on-wall = Ponga sus dos puntos en el muro donde está.
route-end-unknown = No hay puerta, portón ni objeto llamado { $name }.
route-name-end = Nombre una puerta, un portón o un objeto de este patio.
route-width-odd = El paso de { $from } a { $to } no tiene un ancho válido.
route-width-usual = Un paso en una zona de juego tiene { $width } de ancho.
route-none = No hay paso de { $from } a { $to }, por estrecho que sea. Se pide: { $width }.
route-too-narrow = No hay paso de { $from } a { $to } de { $width } de ancho. El más ancho tiene { $widest }.
route-may-narrow = Un paso así puede estrecharse a { $narrow } en un tramo corto: pregunte a quien conozca las normas locales.
route-clear-way = Mueva lo que estorba o pida otro paso.
