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
toml-syntax = no se puede leer esta línea
toml-look-here = una línea es `clave = valor`, un [título] o un comentario tras #
toml-more = { $count ->
    [one] tampoco se puede leer otra línea
   *[other] tampoco se pueden leer otras { $count } líneas
 }
toml-comma = en este archivo un número lleva punto decimal, no coma
toml-comma-mend = escríbalo con punto, o entre comillas, como "5,20"
toml-twice = `{ $key }` está dos veces aquí
toml-twice-mend = deje uno solo
toml-no-value = no hay nada tras el signo igual
toml-no-value-mend = escriba un valor, o quite la línea
toml-bare = `{ $found }` debe ir entre comillas
toml-bare-mend = un texto, y una longitud con su unidad, van entre comillas rectas, como "5.20 m"
toml-no-equals = falta el signo igual tras esta clave
toml-no-equals-mend = escriba `clave = valor`
toml-quote = falta una comilla aquí
toml-quote-mend = abra y cierre el texto con una comilla recta; si el texto lleva la marca de pulgadas, use comillas simples o escriba `in`
toml-inch = una comilla dentro del texto lo termina demasiado pronto
toml-backslash = una barra invertida tiene un sentido propio entre comillas dobles
toml-backslash-mend = ponga el texto entre comillas simples
toml-heading = el título de esta tabla no está cerrado
toml-heading-mend = escriba [nombre] para una, [[nombre]] para cada una de varias
toml-list = falta una coma o un corchete de cierre en esta lista
toml-list-mend = escriba la lista como ["A", "B", "C"]
toml-braces = falta una coma o una llave de cierre aquí
toml-braces-mend = escriba la tabla como { "{" } A = [0, 0], B = [24, 0] { "}" }
toml-date = `{ $found }` no es una fecha
toml-date-mend = escriba el año, el mes y el día, como 2026-09-01
toml-truth = `{ $found }` no es ni true ni false
toml-truth-mend = escriba true o false en minúsculas
toml-zero = un número no empieza por cero
toml-zero-mend = quite el cero, o escriba el valor entre comillas
toml-line = en esta línea hay más que una clave y su valor
toml-line-mend = escriba una clave en cada línea
key-missing = falta `{ $key }` en { $table }
key-add = añada `{ $key }`
key-unknown = `{ $key }` no es una clave de { $table }
did-you-mean = ¿quiso decir `{ $near }`?
one-of = una de estas: { $names }
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
names-count = `{ $key }` tiene { $found ->
    [one] un nombre
   *[other] { $found } nombres
 } y se piden { $wanted }
name-empty = el proyecto no tiene nombre
name-odd = `{ $name }` no es un nombre que sirva en un archivo
name-as = escriba `{ $name }`, aquí y dondequiera que se use
date-odd = `{ $found }` no es una fecha
name-twice = el nombre `{ $name }` se usa dos veces
currency-unknown = `{ $found }` no es un código de moneda

# Longitudes
length-empty = aquí no hay ninguna longitud
length-no-number = `{ $found }` no es un número
length-unit = `{ $found }` no es una unidad de longitud
length-ambiguous = `{ $found }` podría ser dos números distintos: quite el separador de miles
length-order = las unidades están en mal orden, o falta una
length-carry = `{ $found }` es demasiado junto a la unidad mayor: pásela a esta
length-too-long = ningún patio mide más de 10 km
length-say-unit = un número sin unidad está en la unidad del proyecto: si es otra, escríbala, como "12000 mm"
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
row-quote = una celda que contiene la marca que separa las celdas va entre comillas, como "{ $cell }"
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
cell-leave-empty = deje la celda vacía si no se midió nada
reading-same-points = { $point } aparece dos veces en esta lectura
readings-disagree = de { $from } a { $to } hay { $here } aquí y { $before } antes
readings-within = dos lecturas del mismo par que difieran como mucho en { $allowed }
readings-again = mida otra vez de { $from } a { $to } y quédese con las lecturas fiables
frame-two-points = nombre dos puntos, lejos uno del otro
frame-one-point = `origin` y `towards` son el mismo punto
point-unknown = ninguna lectura lleva a un punto `{ $point }`
point-loose = { $point } se usa aquí, y las lecturas no dicen dónde está
point-loose-mend = mida { $point } desde un punto más, bien de lado; hasta entonces no se puede planear a su alrededor
point-measure = mida { $point }, o quite el nombre

# El patio
names-alike = `{ $here }` y `{ $before }` son dos puntos que solo difieren en mayúsculas
names-alike-mend = si se trata de un solo punto, escríbalo igual en todas partes
tape-long = { $count ->
    [one] esta lectura es de { $reading }: ninguna cinta es tan larga
   *[other] { $count } lecturas son más largas que cualquier cinta; esta es de { $reading }
 }
tape-long-mend = revise la unidad: `units` en project.toml dice qué es un número sin unidad
row-decimal-split = esto parece la lectura { $whole },{ $part } en dos celdas
boundary-empty = el contorno no tiene esquinas
boundary-short = { $found ->
    [one] el contorno tiene una sola esquina
   *[other] el contorno tiene solo { $found } esquinas
 }
boundary-corners = nombre las esquinas del patio en el orden en que se camina, como ["A", "B", "C", "D"]
outside-yard = { $name } queda fuera del patio
outside-yard-mend = revise sus lecturas; quítelo si no está en este patio
outline-short = un contorno necesita al menos tres puntos, y aquí hay { $found }
outline-crosses = este contorno se cruza a sí mismo
outline-order = nombre sus puntos en el orden en que se recorre
edge-off-boundary = { $point } no está en el borde del patio
edge-corners = nombre esquinas del contorno, o puntos medidos sobre él
edge-no-length = este lado empieza y acaba en el mismo lugar
hinge-elsewhere = la bisagra `{ $hinge }` no es ningún extremo de la abertura
route-end-nowhere = ninguna puerta, cancela ni elemento se llama `{ $name }`
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
write-exists = { $file } ya existe, y no se escribe encima
write-elsewhere = elija una carpeta que aún no exista, o quite el archivo de ahí

# The class
child-name = esto parece el nombre de un niño; los nombres quedan fuera de estos archivos, para que nadie ajeno al centro pueda reconocerlo
child-want-code = un código, como `wren` o `c07`: una letra, y después letras, cifras, _ o -
child-list-apart = guarde la lista de nombres y códigos en papel, bajo llave, en el centro
child-column-personal = la columna `{ $column }` permitiría reconocer a un niño fuera del centro
child-column-out = quite la columna, y guarde lo que contiene en papel en el centro
child-born-day = aquí hay un día de nacimiento; basta el mes, y un día puede delatar a un niño
child-born-write = escriba { $month }
child-born-odd = `{ $found }` no es un mes de nacimiento
child-want-month = un año y un mes, como 2023-03
child-hops-below = los saltos no pueden medir menos que nada
child-want-hops = la longitud de cinco saltos a la pata coja, o 0 si aún no puede con ese pie
child-nobody = ningún niño tiene el código `{ $child }`
child-want-known = un código de children.csv
child-write-class = escriba primero children.csv, o `ages` en programme.toml
override-no-child = `{ $key }` no pertenece a ningún niño
override-want-child = primero el código de un niño entre corchetes, como [wren]
override-outside = `{ $key }` está fuera de lo posible
override-want-length = una longitud de 0 a 10 m; solo `tau` y `scatter` pueden ser 0
override-want-speed = metros por segundo, más de 0 y como máximo 10

# The programme
weights-none = todas las destrezas pesan 0: no hay nada que planear
weights-some = dé a alguna destreza un peso mayor que 0
word-odd = `{ $word }` no es una palabra para un tablero de letras
word-want = de { $least } a { $most } letras y nada más
family-unknown = no hay ninguna familia `{ $family }`
family-draw = dibújela usted como figures/{ $family }.svg, o elija otra
family-both = `{ $family }` se quiere y se rechaza
figure-name = `{ $name }` no es un nombre que un plano pueda usar
figure-like-family = una figura propia no puede llamarse `{ $name }`: así se llama una familia de la casa
figure-rename = dé otro nombre al archivo
age-odd = `{ $age }` no es una edad en años
age-want = una edad de 0 a 18, como 3, o "3.25" entre comillas
age-bare = una edad con punto va entre comillas
age-quote = escriba ages = { "{" } "3.5" = 2 { "}" }
age-count = el número de niños de { $age } años debe ser un número entero
ages-and-class = children.csv tiene a los niños uno por uno, así que estos números no se usan
ages-out = quite `ages`, o saque children.csv de la carpeta
package-size = `{ $found }` no es un tamaño en que esto se venda
package-want-volume = un tamaño como "0.75 L", "750 ml", "1 qt" o "1 gal"
package-want-length = una longitud como "50 m" o "150 ft"
package-want-mass = un peso como "500 g", "1 kg" o "5 lb"
package-price = el precio de `{ $package }` no es un número

# The layout
layout-mirrored = la familia { $family } no admite espejo: lo que lleva escrito se leería al revés
layout-mirrored-mend = quite `mirrored`, y gire la figura
layout-unread = layout.toml no se puede leer, así que no se escribe encima
layout-mend-first = corríjalo o quítelo de la carpeta, y planee de nuevo

# Trials
trial-count = `{ $column }` no puede ser { $found }
trial-want-count = un número entero de { $low } a { $high }
trial-one = una fila de intentos nombra una figura pintada o una del día, y nunca las dos
trial-want-one = en `marking` un nombre de layout.toml, o en `figure` una familia
trial-marking = ninguna figura de layout.toml se llama `{ $marking }`
trial-as-figure = nombre una que esté ahí, o escriba la familia en `figure` y sus longitudes en `lengths`
trial-lengths-spare = las longitudes son de una figura del día, no de una pintada
trial-lengths-out = quítelas: las de la figura están en layout.toml
trial-length-unknown = la familia { $family } no tiene la longitud `{ $length }`
trial-lengths-missing = faltan longitudes de la figura de ese día: { $names }
trial-lengths-add = mida lo que se dibujó con tiza, y añada { $example }
trial-lengths-odd = `{ $found }` no es un nombre con su longitud
trial-want-lengths = nombres y longitudes, como narrow=20 cm; wide=75 cm
trial-activity-unsaid = esta figura se usa de más de una manera, y la fila no dice de cuál
trial-activity = `{ $activity }` no se hace en esta figura

# Readings still to come
build-hours = el equipo terminaría antes de empezar
build-hours-mend = escriba horas del reloj, como from = 9 y until = 15.5
build-tool = con { $tool } no se corta { $material }
weather-unreadable = no se puede leer { $file }, o es más grande que cualquier año de horas
game-like-ours = un juego de la casa se llama { $name }
seen-one = una fila tiene miradas o apoyos, no ambas cosas ni ninguna
seen-want-one = `looks` y `met`, o `contacts` y `broke`
seen-skill = { $found } no es un movimiento
seen-yes-no = { $found } no es ni yes ni no
tape-blank = { $count ->
    [one] una fila tiene sus puntos y todavía ninguna lectura
   *[other] { $count } filas tienen sus puntos y todavía ninguna lectura
 }
tape-fill = mídalas y rellénelas; quite las que nadie pueda medir

# A new folder
new-corners = ningún patio tiene { $found ->
    [one] una esquina
   *[other] { $found } esquinas
 }
new-project = Cómo se llama este proyecto y cómo quiere que se le hable.
new-project-units = Los números sin unidad están en esta, m o ft. Toda longitud puede llevar la suya: "5.31 m", "531 cm", "17 ft 5 1/4 in". Idiomas: en, es. Papel: a4, letter.
new-project-zones = La norma que deja libre el suelo alrededor de los juegos: us-handbook o european-norm. Las normas locales y los inspectores autorizados van antes que ambas.
new-project-budget = Lo que se puede gastar en pintura y material, en esta moneda; si no se dice, el dinero no limita.
new-project-date = El día en que se cuentan las edades.
new-project-figures = Aquí se puede cambiar toda cifra que usa el programa; `chalkyard sources` las enumera.
new-tape = Una lectura por fila, tal como se canta en el patio. Mida cada lado dos veces, desde ambos extremos: otra fila del mismo par es otra lectura. Mantenga la cinta tensa y a nivel, lejos de los juegos calientes, y ponga un cono donde cruce una entrada. Las líneas que empiezan por # no se leen. Una fila se ve así:
new-survey = El patio: sus esquinas, qué son sus lados y qué hay en él. Mire primero, marque cada esquina con tiza, y que alguien aparte a los niños y el tráfico mientras se mide.
new-survey-boundary = Las esquinas en el orden en que se camina alrededor, en sentido contrario a las agujas del reloj visto desde arriba. La primera es el origen, y la segunda está en la dirección de x.
new-survey-north = El rumbo de la primera esquina a la segunda, en grados desde el norte en el sentido del reloj: basta una brújula.
new-survey-edges = Qué es cada lado: wall (muro), fence (valla), hedge (seto), kerb (bordillo), drop (desnivel) u open (abierto).
new-survey-surface = De qué es el suelo y cómo está: sound (sano), worn (gastado), cracked (agrietado) o spalled (desconchado). Otros bloques [[surface]] quedan encima del primero.
new-survey-offset = Un punto medido desde una línea: tanto a lo largo, tanto a su izquierda (a la derecha con signo menos). Quite los # donde use un bloque, y ponga sus propios puntos.
new-survey-fixture = Lo que hay en el patio: lo redondo por su centro y su radio, lo demás por su contorno. Clases: slide (tobogán), swing (columpio), tyre-swing (columpio de neumático), climber (trepador), seesaw (balancín), rocker (muelle), roundabout (tiovivo), house (casita), tree (árbol), post (poste), lamp (farola), bench (banco), table (mesa), shed (cobertizo), building (edificio), planter (jardinera), sandpit (arenero), drain (sumidero), cover (tapa), hydrant (boca de incendio), other (otro).
new-survey-swing = Un columpio por los extremos de su barra y la altura de sus ejes.
new-survey-slide = Un tobogán por su contorno, la altura de su plataforma y los dos puntos de su salida.
new-survey-door = Una puerta al patio por sus dos jambas y la que lleva la bisagra; opens = "out" es sobre el patio.
new-survey-gate = Una cancela por sus dos postes.
new-survey-route = Pasos que deben quedar abiertos, de una puerta, una cancela o un elemento a otro.
new-survey-stand = Dónde suele estar el personal.
new-survey-place = En qué lugar de la tierra, para el sol y la sombra.
new-children = Un niño por fila, con un código y el mes de nacimiento. Nunca un nombre, nunca un día: guarde la lista de códigos en papel en el centro. Solo hacen falta id y born; mida lo que pueda. sex es f o m; less_used es left (izquierdo) o right (derecho), el pie que se sabe que usa menos; means es feet (a pie), walker (con andador), wheels (con ruedas) o held (de la mano). Una fila se ve así:
new-programme = Lo que el centro quiere hacer con su patio.
new-programme-ages = Si children.csv queda vacío: cuántos niños hay de cada edad.
new-programme-words = Palabras para tableros de letras.
new-programme-families = Figuras que se quieren (entonces no se consideran otras) o que se rechazan.
new-programme-prices = Lo que cuesta la pintura donde la compra, por bote.
new-programme-build = Quién pinta, cuántos días, entre qué horas del reloj. En docs/format.md hay más: de qué se cortan las plantillas y con qué.
new-programme-weights = Cuánto se quiere cada destreza; 0 deja una fuera.
traced-file-assumed = Lo que se supone: se imprime en el informe. Tache lo que ya haya medido.
