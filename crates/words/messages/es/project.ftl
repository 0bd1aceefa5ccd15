# Archivos
file-missing = no hay { $file } en esta carpeta
file-no-file = { $file } no es un archivo
file-unreadable = no se puede leer { $file }: { $why }
file-too-long = { $file } pasa de 8 MiB: nadie escribe a mano un archivo así
file-not-utf8 = { $file } no es texto UTF-8: la línea { $line } contiene otros bytes
file-save-as-utf8 = guarde el archivo otra vez como texto UTF-8
file-survey = escriba survey.toml: al menos `boundary`, las esquinas del patio en el orden en que se recorren
folder-new = cree una carpeta de proyecto con `chalkyard new`
ledger-broken = no se pueden leer las cifras que vienen con el programa: { $why }

# Tablas de texto
toml-syntax = el archivo no se puede leer aquí: { $says }
toml-look-here = busque aquí o justo antes una comilla, un corchete o un signo igual que falte
toml-more = { $count ->
    [one] hay un lugar más que no se puede leer; casi siempre viene del primero
   *[other] hay { $count } lugares más que no se pueden leer; casi todos vienen del primero
 }
key-missing = falta `{ $key }` en { $table }
key-add = añada `{ $key }`
key-unknown = `{ $key }` no es una clave de { $table }
did-you-mean = ¿quiso decir `{ $near }`?
one-of = uno de { $names }
value-type = `{ $key }` contiene { $found ->
    [found-text] un texto
    [found-number] un número
    [found-truth] verdadero o falso
    [found-date] una fecha
    [found-list] una lista
   *[found-table] una tabla
 }
want-text = un texto entre comillas
want-number = un número simple
want-truth = true o false
want-date = una fecha sin hora, como 2026-09-01
want-names = una lista de nombres, como ["A", "B"]
want-table = una tabla
want-tables = una tabla entre [[corchetes dobles]]
want-pair = dos longitudes, como [7.2, 4.1]
want-length = una longitud, como 5.31, "5,31 m", "531 cm" o "17 ft 5 1/4 in"
want-positive-length = una longitud mayor que cero
want-between = un número de { $low } a { $high }
want-name = una letra, y después letras, cifras, _ o -
want-currency = tres letras mayúsculas, como USD
word-unknown = `{ $word }` no es una palabra para `{ $key }`
number-outside = `{ $key }` queda fuera de lo posible
number-not-whole = `{ $key }` debe ser un número entero
names-count = `{ $key }` tiene { $found } nombres y se esperan { $wanted }
name-empty = el proyecto no tiene nombre
name-odd = `{ $name }` no es un nombre que sirva en un archivo
name-twice = el nombre `{ $name }` se usa dos veces
currency-unknown = `{ $found }` no es un código de moneda

# Longitudes
length-empty = aquí no hay ninguna longitud
length-no-number = `{ $found }` no es un número
length-unit = `{ $found }` no es una unidad de longitud
length-ambiguous = `{ $found }` podría ser dos números distintos: quite el separador de miles
length-order = las unidades están en mal orden, o falta una
length-carry = `{ $found }` es más de lo que cabe en la unidad siguiente
length-too-long = ningún patio mide más de 10 km
length-not-positive = `{ $key }` debe ser mayor que cero

# Filas y celdas
table-empty = { $file } está vacío
table-header = una primera fila con los nombres de las columnas: { $header }
column-missing = no hay columna `{ $column }`
column-unknown = `{ $column }` no es una columna de esta tabla
column-twice = la columna `{ $column }` aparece dos veces
cell-empty = esta fila no tiene nada en `{ $column }`
cell-fill = rellene `{ $column }`, o quite la fila
row-too-long = esta fila tiene { $cells } celdas para { $columns } columnas
row-decimal-comma = escriba la coma decimal entre comillas, como "5,31", o separe las celdas con punto y coma
quote-open = aquí se abre una comilla que no se cierra
quote-close = cierre la comilla, o quítela
quote-more = hay texto después de la comilla de cierre
quote-double = dentro de una celda entre comillas, escriba la comilla dos veces: ""

# Cifras
figure-unknown = el registro no tiene ninguna cifra `{ $key }`
figure-search = busque en el registro con `chalkyard sources`
figure-count = `{ $key }` lleva { $wanted ->
    [one] un número
   *[other] { $wanted } números
 }, y aquí hay { $found }
figure-no-number = `{ $key }` no es un número

# Lecturas
tape-no-rows = aún no hay lecturas en { $file }
tape-print-sheet = imprima la hoja de cinta que hace `chalkyard survey` y salga con ella
tape-same-ends = esta lectura va de { $point } a sí mismo
tape-not-positive = una lectura debe ser mayor que cero
tape-leave-out = si no se midió, quite la fila
reading-same-points = { $point } aparece dos veces en esta lectura
readings-disagree = de { $from } a { $to } hay { $here } aquí y { $before } antes
readings-within = dos lecturas del mismo par que difieran como mucho en { $allowed }
readings-again = mida otra vez de { $from } a { $to } y quédese con las lecturas fiables
frame-one-point = `origin` y `towards` son el mismo punto
point-unknown = ninguna lectura lleva a un punto `{ $point }`
point-measure = mida { $point }, o quite el nombre

# El patio
outline-short = un contorno necesita al menos tres puntos, y aquí hay { $found }
outline-crosses = este contorno se cruza a sí mismo
outline-order = nombre sus puntos en el orden en que se recorre
edge-off-boundary = { $point } no está en el borde del patio
edge-no-length = este lado empieza y acaba en el mismo lugar
hinge-elsewhere = la bisagra `{ $hinge }` no es ningún extremo de la abertura
route-end-unknown = ninguna puerta, cancela ni elemento se llama `{ $name }`
route-ends = el nombre de una puerta, una cancela o un elemento

# A yard traced on an open map
traced-not-json = este archivo no es JSON: { $says }
traced-no-yard = { $file } no contiene el contorno de ningún patio
traced-want-yard = GeoJSON en grados con un polígono para el patio (propiedad "role": "yard")
traced-want-degrees = longitud de -180 a 180 y después latitud de -90 a 90
traced-odd = { $count ->
    [one] una forma tiene coordenadas que no son grados: queda fuera
   *[other] { $count } formas tienen coordenadas que no son grados: quedan fuera
 }
traced-pole = este contorno está demasiado cerca de un polo
traced-holes = { $count ->
    [one] el contorno tiene un hueco: queda fuera
   *[other] el contorno tiene { $count } huecos: quedan fuera
 }
traced-too-wide = el contorno llega a { $reach } de su centro: eso no es un patio
traced-want-width = como máximo { $width }
traced-too-small = el contorno encierra solo { $area }
traced-crosses = el contorno del patio se cruza a sí mismo
traced-redraw = dibújelo de nuevo en el mapa, esquina por esquina en el orden en que se camina alrededor
traced-sides = el mapa no dice qué son estos lados: { $sides }
traced-sides-mend = cuentan como muros; escriba un [[edge]] para cada uno que no lo sea
traced-surface = el mapa no dice de qué es el suelo: se supone asfalto
traced-surface-mend = mírelo y corrija el [[surface]] en survey.toml
traced-sigma = un punto de un mapa puede estar desviado más de { $sigma }: basta para planear, no para pintar
traced-tape = mida los lados y las diagonales con cinta, y ponga las lecturas en tape.csv
traced-footprints = solo son puntos en el mapa; su huella se supone y su altura no se conoce: { $names }
traced-footprints-mend = mida cada uno y escriba su contorno; hasta entonces vale la zona libre más ancha
traced-gates = solo son puntos en el mapa; se supone { $width } de ancho: { $names }
traced-gates-mend = mida los dos postes de cada puerta
traced-outside = fuera del patio, no se toman: { $names }
traced-unknown = no son de un patio, no se toman: { $names }
traced-file-head = Este levantamiento se trazó sobre un mapa abierto; no se midió. Mida el patio con cinta antes de pintar: ponga las lecturas en tape.csv y quite los puntos [[known]] que haya medido.
traced-file-frame = Metros en un plano de Mercator transversal (WGS 84) que toca el suelo en la latitud { $latitude }, longitud { $longitude }; x va al este, y al norte. El plano mismo es exacto a 0,01 mm en un patio.
traced-file-known = Un punto de un mapa se toma como bueno a { $sigma } (desviación típica).
traced-file-edges = Lados que el mapa nombra; los demás cuentan como muros.
traced-file-surface = El mapa no registra el suelo: se supone asfalto. Mírelo y corríjalo.
traced-file-fixtures = Solo son puntos en el mapa: el radio de cada uno se supone, su altura no se conoce. Mídalo.
traced-file-gates = Solo son puntos en el mapa: el ancho se supone.

# Writing
write-failed = no se pudo escribir { $file }: { $cause }
write-nothing-changed = no se cambió nada; haga sitio o libere el archivo, e inténtelo de nuevo
write-mixed = tampoco se pudo restaurar: unos archivos son nuevos y otros viejos, todos enteros; ejecútelo otra vez
