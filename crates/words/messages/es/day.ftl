# El papel para el día de pintar.
page-kind-day = el día de pintar
day-title = { $name }: el día de pintar
day-care-advice = Este plan es un consejo. Primero van los códigos locales, las normas de licencia, la ley de accesibilidad, las etiquetas y las hojas de seguridad. Pregunte a un profesional autorizado donde se exija.
day-care-leave = Tenga el permiso escrito del dueño. Pregunte quién más usa o repara el suelo.
day-care-zones = Deje las marcas y los sitios de espera fuera de las zonas de caída y de columpio. Si se movió un equipo, compruebe otra vez.
day-care-open = Deje abiertas puertas, portones, salidas de emergencia y caminos accesibles, al pintar y después.
day-care-closed = Cierre el patio a los niños hasta que la pintura esté dura. Ponga una cuerda y deje a alguien de guardia.
day-care-traffic = Pare antes el tráfico: conos y un vigilante donde puedan llegar coches o repartos.
day-care-heat = El suelo al sol quema. Ponga el dorso de la mano 5 segundos, use zapatos y rodilleras, trabaje temprano, beba agua.
day-care-old = La pintura vieja puede tener plomo o cromato. No la lije, no la raspe ni la queme. Hágala analizar antes.
day-care-chemicals = Al agua también es química: guantes, gafas, aire fresco, nada de comer ni beber cerca. Ningún menor de 16 años toca disolventes.
day-care-grit = La arena hace polvo dañino: viértala bajo, humedézcala, use mascarilla ajustada, nunca la sople. Hidrolavadoras y sopladores: solo adultos instruidos, con gafas.
day-care-tapes = Las cintas y las cuerdas hacen tropezar: planas, señaladas y recogidas al acabar. Una cinta de acero corta y conduce la corriente.
day-care-blades = Corte con hoja afilada, hacia fuera, sobre una base, con guante anticorte en la otra mano. Cuente las hojas al entrar y al salir. Niños lejos.
day-care-laser = Nunca corte con láser PVC ni un plástico que no conozca. Las planchas se levantan entre dos. Déjelas en el suelo si hay ráfagas.
day-care-dry = No pinte en mojado, con lluvia cerca, con helada, ni con el suelo a menos de 3 °C sobre el punto de rocío. Lea los límites de la etiqueta.
day-care-slip = La pintura fresca y la lisa resbalan. Pruebe el agarre en mojado antes de que la usen los niños.
day-care-drain = No enjuague brochas en desagües pluviales ni en la tierra. No pinte caucho, desagües, tapas, hidrantes ni señales.
day-care-aid = Tenga botiquín, agua y teléfono. Conozca las alergias del equipo. Lavarse las manos.
day-before = Antes de empezar
day-before-leave = El permiso del dueño está aquí, y el patio está cerrado y acordonado.
day-before-weather = Sin lluvia desde hace 24 horas, y ninguna prevista en las 12 horas tras la última mano.
day-before-surface = Suelo y aire están entre 10 y 35 °C. Se midió el suelo al sol y a la sombra.
day-before-damp = Un plástico transparente, pegado dos horas al suelo, no muestra humedad.
day-before-swept = Barrido y lavado. Grietas de más de 10 mm y bordes de más de 6 mm quedan fuera.
day-before-bar = Se midió la barra de escala del plano.
day-before-traffic = Portón cerrado o vigilado, conos puestos.
day-before-told = Todos saben quién es quién, dónde está el botiquín y por dónde se sale.
day-when = Cuándo pintar
day-when-no-file = El proyecto no tiene archivo del tiempo. Ponga uno en la carpeta weather (docs/format.md), o lea aire, suelo y humedad en el sitio.
day-when-year = En un año típico en { $place } la pintura seca mejor en { $months }. Horas en que se cumplen todas las reglas, dentro del horario del equipo; días con bastantes seguidas. Un año típico no es un pronóstico.
day-when-forecast = { $count ->
    [0] El pronóstico para { $place } no tiene ninguna ventana segura para el trabajo.
    [one] El pronóstico para { $place } tiene una ventana para el trabajo.
   *[other] El pronóstico para { $place } tiene { $count } ventanas para el trabajo.
 }
day-column-month = mes
day-column-hours = horas
day-column-days = días
day-column-unknown = no se sabe
day-column-from = de
day-column-to = a
day-column-children = niños desde
day-column-verdict = qué se dice
day-verdict-fine = bien
day-verdict-unknown = falta un dato: pregunte antes
day-verdict-not = no
day-month = { $month ->
    [1] enero
    [2] febrero
    [3] marzo
    [4] abril
    [5] mayo
    [6] junio
    [7] julio
    [8] agosto
    [9] septiembre
    [10] octubre
    [11] noviembre
   *[other] diciembre
 }
day-work = Orden del trabajo
day-work-told = { $people ->
    [one] Una persona acaba
   *[other] { $people } personas acaban
 } a las { $end } si todo va bien. { $proven ->
    [yes] Con estas personas, plantillas y cintas nadie puede acabar antes.
   *[no] Otro orden ahorraría como mucho { $hours ->
        [0] { $minutes ->
            [one] un minuto
           *[other] { $minutes } minutos
        }
       *[other] { $hours } horas
    }, contando las noches.
 }
day-work-children = Los niños pueden volver desde { $when }, cuando un adulto haya probado cada marca. Hasta entonces el patio sigue acordonado.
day-chart-told = Día { $day }: quién trabaja en qué; { $people ->
    [one] una línea
   *[other] { $people } líneas
 } para las personas, horas a lo ancho, barras llenas para las manos de pintura, números como en la lista.
day-column-task = tarea
day-column-people = quién
day-column-waits = espera a
day-task = { $name }: { $what }
day-task-coat = { $name }: { $colour }, mano { $coat }{ $any ->
    [yes] , con { $through }
   *[no] { "" }
 }
day-clock = día { $day }, { $time }
day-setout = Replanteo
day-stencils = Plantillas
day-stencils-told = { $stencils ->
    [one] Una plantilla se pone
   *[other] { $stencils } plantillas se ponen
 } { $uses ->
    [one] una vez
   *[other] { $uses } veces
 } por mano. Se cortan de { $sheets ->
    [one] una plancha
   *[other] { $sheets } planchas
 }; los archivos están en out/cut.
day-stencil-up = «Este lado arriba» se lee desde arriba. La flecha mira hacia donde van los niños.
day-stencil-ticks = Ponga la plantilla sobre las marcas de tiza, péguela y sujétela plana donde pasa el rodillo.
day-stencil-ties = Levántela con la pintura fresca, hacia arriba. Pinte con pincel los puentes añadidos; las ranuras a lo largo quedan abiertas.
day-stencil-clean = Limpie los dos lados. Lávela bien cada cinco usos.
day-stencils-alt = Plantillas con sus aberturas en color: { $stencils }.
day-column-stencil = n.º
day-column-shows = muestra
day-column-plate = plancha, { $unit }
day-column-panels = paneles
day-column-where = se pone en
day-laid = { $name } × { $times }{ $over ->
    [0] { "" }
   *[other] , { $over } boca abajo
 }
day-motif = { $motif ->
    [ring] aro
    [cell] casilla
    [disc] disco
    [half-moon] salida
    [chevron] adelante
    [stroke] trazo corto
    [print] huella
    [glyph] { $glyph }
   *[other] figura
 }
day-taped = Sin plantilla
day-taped-how = Se pintan entre líneas de tiza o cinta. Quite la cinta cuando la pintura esté pegajosa.
day-column-colour = color
day-column-shapes = figuras
day-column-edge = borde, { $unit }
day-paint = Pintura
day-paint-how = Litros con lo que queda en bandeja, rodillo y plantilla, y una reserva para retoques.
day-column-coats = manos, L
day-column-need = hace falta, L
day-column-cans = latas
day-column-over = sobra, L
day-no-can = no se conoce lata
day-shop = Para comprar y traer
day-shop-total = { $unknown ->
    [0] Todo cuesta { $known }.
    [one] Cuesta al menos { $known }: una línea no tiene precio aún.
   *[other] Cuesta al menos { $known }: { $unknown } líneas no tienen precio aún.
 } La pintura pide otra mano tras unos { $months } meses; se cuenta con { $years ->
    [one] un año
   *[other] { $years } años
 }.
day-shop-paint = { $cans } { $colour }: { $price }
day-shop-primer = { $cans } imprimación: { $price }
day-shop-sheets = { $count ->
    [one] 1 plancha para plantillas
   *[other] { $count } planchas para plantillas
 }
day-shop-line = { $count } { $piece ->
    [yes] × { $thing }
   *[no] { $unit } de { $thing }
 }: { $price }
day-shop-how = Compare una muestra seca de cada color antes de comprar. Al agua, con pocos disolventes, para suelos exteriores; guarde la etiqueta.
day-price-unknown = pregunte el precio
day-rain = Si llueve
day-rain-stop = Pare. Ponga las tapas. Entre las plantillas, el lado mojado arriba.
day-rain-cover = No tape la pintura fresca con plástico: se pega. Las gotas dejan señales; déjelas.
day-rain-wash = Que no llegue al desagüe: un trapo mojado alrededor, y recoja lo que corre.
day-rain-wait = Espere a que el suelo lleve 24 horas seco y el plástico no muestre humedad.
day-rain-mend = Lave lo que no agarró, deje secar y ponga la plantilla otra vez sobre la tiza. Replantee lo que la lluvia borró.
day-rain-rope = Deje el patio acordonado. Diga a la dirección cuándo pueden volver los niños.
day-done = Antes de irse
day-done-checks = Se leyó la comprobación de cada señal, se cumple y está en checks.csv.
day-done-blades = Hojas contadas, cintas y cuerdas recogidas.
day-done-brushes = Las brochas se lavaron en un cubo o un fregadero, nunca en un desagüe pluvial. Los restos, donde diga el municipio.
day-done-grip = Se probó en mojado, con zapato, un trozo pintado.
day-done-open = Puertas, portones y caminos están abiertos. La pintura fresca está acordonada y vigilada.
day-done-photo = Se hizo una foto de cada marca desde el mismo sitio, sin niños.
day-done-stencils = Plantillas limpias, secas y guardadas planas; la oficina sabe dónde.
day-leader = Quién dirigió
day-built = Cómo quedó
day-built-how = Lo que se pintó de verdad. Mueva la marca en layout.toml lo que se anote aquí y fíjela.
day-built-moved = movida
day-built-paint = pintura, lote
day-built-coats = manos
day-built-degrees = °C, %
cut-units = Unidades: mm, 1:1
cut-square = Medir: 100 mm, con 0,5 de margen
cut-side-up = Este lado arriba
cut-window = Pintar en { $name }
page-kind-tiles = plantilla a 1:1
tiles-map = Mapa de las hojas de { $panel }: { $columns } a lo ancho, { $rows } a lo alto, con las líneas de corte.
tiles-page = Hoja { $page } de { $panel } a 1:1: las líneas de corte que caen en ella, marcas de recorte, una barra de 100 mm y otra de 4 pulgadas.
tiles-scale = Imprima al 100 %, sin ajustar a la página. Mida las dos barras: medio milímetro ya es demasiado.
tiles-glue = Recorte por las marcas, ponga cada hoja sobre la línea de su vecina y pegue. Corte hacia fuera.
tiles-right = derecha: { $page }
tiles-below = abajo: { $page }
