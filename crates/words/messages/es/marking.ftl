# La sala de las marcas: longitudes de las familias y por qué algunas no dan figura.
marking-count = { $family } no tiene { $given ->
    [one] una longitud
   *[other] { $given } longitudes
}.
marking-count-expected = Tiene { $wanted }.
marking-range = { $length } de { $family } no puede ser { $given }.
marking-range-expected = Va de { $least } a { $most }.
marking-clash = { $length } de { $family } es demasiado corta junto a sus otras longitudes.
marking-clash-expected = Con estas, { $length } ha de medir al menos { $least }.
length-cell = lado de un cuadro para un pie
length-single = de centro a centro hacia un cuadro para un pie
length-double = de centro a centro hacia un par de cuadros y al salir de él
length-spot = ancho de un aro y fondo de una casilla ancha
length-hop = de centro a centro hacia un aro
length-jump = de centro a centro hacia una casilla ancha
length-apart = de centro a centro de dos recorridos paralelos
length-within = de centro a centro entre un aro guía y el par que lo sigue
length-between = de centro a centro entre dos grupos de aros
length-ring = ancho de un aro
length-ahead = del centro de la estrella al centro de la casilla de delante; las demás quedan tan lejos como sea fácil cada dirección
length-star-spot = fondo de una casilla en la dirección de la mirada
length-step = de centro a centro entre dos casillas, contiguas o una tras otra
length-numbered = fondo de una casilla con número a lo largo del recorrido
length-square = lado de un cuadro con su banda
length-field = ancho de un campo redondo; cuadrados y triángulos se dibujan para que parezcan igual de grandes
length-out = del centro de la rosa al centro de una casilla
length-narrow = ancho libre del agua en su extremo estrecho
length-wide = ancho libre del agua en su extremo ancho
length-length = longitud a lo largo del recorrido
length-width = ancho libre entre los bordes
length-radius = radio de las curvas
length-radius-inner = radio de la curva más interior
length-radius-outer = radio del anillo más exterior
length-narrow-line = ancho de la línea más fina
length-wide-line = ancho de la línea más ancha
length-beat = a lo largo de una pista, de un pulso al siguiente
length-stride-gallop = de una huella del pie que guía a la siguiente
length-stride-skip = de un paso con salto al siguiente
length-stride-hop = de centro a centro de dos huellas del mismo pie
length-stride-leap = de la huella de un pie a la del otro
