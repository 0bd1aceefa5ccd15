# Dibujos
doc-north-letter = N
doc-kind-survey = plano del patio
doc-kind-tape = hoja de medidas
doc-row-scale = escala
doc-row-date = fecha
doc-row-yard = patio
doc-row-free = libre
doc-row-lengths = medidas
doc-scale-on = { $scale } en { $paper }
doc-lengths-metres = metros
doc-lengths-feet = pies y pulgadas
doc-check-bar = Mida antes la barra: { $length } son { $paper }.
doc-caution-plan = Este plano es un consejo: mandan las normas locales y los profesionales titulados. Deje libres zonas, puertas y pasos.
doc-legend = Leyenda
doc-legend-margin = margen sin pintar
doc-legend-soft = suelo que no se pinta
doc-legend-clear = zona despejada
doc-legend-alone = zona que nada comparte
doc-legend-remark = charco, cuesta o pista
doc-legend-floor = suelo libre ante una puerta
doc-legend-leaf = giro de puerta o portón
doc-legend-drain = sumidero o tapa
doc-legend-route = paso que queda libre
doc-legend-wall = muro
doc-legend-fence = valla
doc-legend-hedge = seto
doc-legend-kerb = bordillo
doc-legend-drop = desnivel
doc-legend-open = borde abierto
doc-legend-tree = árbol; la copa es solo un signo
doc-legend-gate = portón
doc-legend-corner = esquina medida
doc-legend-inner = punto interior medido
doc-legend-stand = puesto del personal
doc-inset = Medición
doc-inset-ellipses = elipses del 95 %, a { $times } veces la escala de este recuadro
doc-inset-doubtful = dudosa: mídala otra vez
doc-inset-unchecked = las demás apenas la comprueban
doc-stand = puesto del personal
doc-label-swing = 2 × eje { $pivot } a cada lado
doc-label-clear = { $clear } despejados
doc-label-route = { $from } a { $to }, { $width } libres
doc-label-door = puerta { $name }
doc-label-gate = portón { $name }
doc-label-opening = { $width } de ancho
doc-remark-puddle = charco
doc-remark-old-paint = pintura vieja
doc-remark-trike-path = pista de triciclos
doc-remark-slope = cuesta
doc-surface-asphalt = asfalto
doc-surface-concrete = hormigón
doc-surface-paving = adoquines
doc-surface-old-paint = pintura vieja
doc-surface-sealer = sellador
doc-surface-rubber = suelo de caucho
doc-surface-mulch = mantillo aglomerado
doc-surface-carpet = moqueta
doc-surface-loose-fill = material suelto
doc-surface-sand = arena
doc-surface-grass = césped
doc-surface-soil = tierra
doc-surface-wood = madera
doc-surface-steel = acero
doc-surface-tactile = pavimento táctil
doc-told-title = { $name }: { $kind }
doc-told-yard = Plano del patio { $name } a { $scale }, { $width } por { $height } en total, superficie { $area }; { $fixtures ->
        [one] un elemento
       *[other] { $fixtures } elementos
    }, { $doors ->
        [one] una puerta
       *[other] { $doors } puertas
    } y { $gates ->
        [one] un portón
       *[other] { $gates } portones
    }; el suelo que queda libre, rayado según su clase; cotas, barra de escala y rótulo.
doc-page-of = página {"{"}p{"}"} de {"{"}n{"}"}
doc-none = ninguno
doc-take-care = Cuidado

# Informe de la medición
doc-report-title = La medición de { $name }
doc-says = Qué dice la medición
doc-verdict-good = Las medidas concuerdan entre sí tanto como lo permite una cinta bien usada. La medición basta para planificar y para pintar.
doc-verdict-good-but = { $count ->
        [one] Se apartó una medida porque las demás la contradicen.
       *[other] Se apartaron { $count } medidas porque las demás las contradicen.
    } Sin { $count ->
        [one] ella
       *[other] ellas
    }, las medidas concuerdan tanto como lo permite una cinta bien usada. Planifique con esta medición y vuelva a medir antes de pintar.
doc-verdict-disagree = Las medidas discrepan más de lo que explica una cinta bien usada. No pinte con esta medición: vuelva a medir antes.
doc-verdict-unchecked = Las medidas alcanzan justo para dibujar el patio y nada las comprueba: un error no se vería. Tome las medidas adicionales de abajo antes de pintar.
doc-verdict-loose = { $count ->
        [one] Las medidas no fijan un punto: está dibujado donde podría estar.
       *[other] Las medidas no fijan { $count } puntos: están dibujados donde podrían estar.
    } Tome las medidas de abajo antes de planificar.
doc-says-areas = El patio mide { $yard }; se pueden pintar { $free }. La cifra tras ± es la mitad del intervalo que contiene el valor verdadero 95 veces de cada 100.
doc-says-worst = El punto peor conocido es { $point }: está a menos de { $within } de donde se dibuja, 95 veces de cada 100.
doc-says-readings = Se { $readings ->
        [one] usó una medida
       *[other] usaron { $readings } medidas
    }, { $dof } más de las que pide la forma. { $unchecked ->
        [0] Las demás comprueban cada una.
        [one] A una apenas la comprueban las demás: un error en ella podría quedar oculto.
       *[other] A { $unchecked } apenas las comprueban las demás: un error en una de ellas podría quedar oculto.
    }
doc-again = Vuelva a medir
doc-next-best = Estas otras medidas ayudarían más, la mejor primero:
doc-next-fixes = De { $from } a { $to }: fija { $point }.
doc-next-checks = De { $from } a { $to }: comprueba la medida { $reading }.
doc-next-separates = De { $from } a { $to }: distingue entre { $readings }, si una de ellas es errónea.
doc-slip-metres = { $count ->
        [one] un metro entero mal leído
       *[other] { $count } metros enteros mal leídos
    }
doc-slip-feet = { $count ->
        [one] un pie entero mal leído
       *[other] { $count } pies enteros mal leídos
    }
doc-slip-tenths = { $count ->
        [one] un decímetro mal leído
       *[other] { $count } decímetros mal leídos
    }
doc-slip-swapped = dos cifras cambiadas: { $read }
doc-slip-foot-inch = pies por pulgadas, o pulgadas por pies: { $read }
doc-slip-hook = el gancho o la anilla de la cinta, { $hook }, contado o no contado
doc-slip-one-of-these = una de estas es errónea y nada dice cuál
doc-slip-unknown = no es un error corriente: mire los dos extremos
doc-noticed = Lo que se observó
doc-noticed-error = Error:
doc-noticed-warning = Revise esto:
doc-noticed-advice = Conviene saber:
doc-picture = La medición dibujada
doc-picture-alt = Los puntos medidos { $names } unidos por sus medidas, cada uno con su elipse del 95 % ampliada; { $doubtful ->
        [0] ninguna medida es dudosa.
        [one] una medida es dudosa y va a trazos.
       *[other] { $doubtful } medidas son dudosas y van a trazos.
    } Las tablas siguientes dan las mismas cifras.
doc-readings = Las medidas
doc-readings-how = Primero las medidas dudosas, luego las que las demás apenas comprueban. «Control» dice cuánto de un error en la medida se vería en la diferencia: 0 nada, 100 todo.
doc-reading-distance = { $from } a { $to }
doc-reading-along = de { $from } hacia { $to }, hasta { $point }
doc-reading-left = { $point } a la recta { $from } a { $to }
doc-reading-square = escuadra en { $at }, { $from } a { $to }
doc-reading-known-x = x de { $point }, conocida
doc-reading-known-y = y de { $point }, conocida
doc-column-reading = medida
doc-column-reads = leída, { $unit }
doc-column-others = las demás, { $unit }
doc-column-probably = probablemente
doc-column-gap = diferencia, { $unit }
doc-column-checked = control, %
doc-column-state = conclusión
doc-state-set-aside = apartada: mídala otra vez
doc-state-doubtful = dudosa: mídala otra vez
doc-state-unchecked = las demás apenas la comprueban
doc-state-agrees = concuerda
doc-points = Los puntos
doc-points-how = x va a lo largo del primer lado e y a su izquierda. «Seguro a» es el semieje mayor de la elipse del 95 %: el punto está así de cerca de donde se dibuja, 95 veces de cada 100.
doc-column-point = punto
doc-column-sure = seguro a, { $unit }
doc-column-side = lado, { $unit }
doc-column-side-to = hasta
doc-side-to = { $to }
doc-point-held = fijado
doc-point-loose = suelto
doc-blocked = Qué queda libre y por qué
doc-blocked-how = Las zonas pueden solaparse, por lo que sus áreas suman más de lo ocupado. Si una norma local, la etiqueta de un producto o el fabricante del equipo piden más, eso es lo que vale.
doc-why-footprint = está ahí
doc-why-clear-zone = zona despejada alrededor del equipo
doc-why-alone = zona despejada que ningún otro equipo comparte
doc-why-surface = este suelo no se pinta, o todavía no
doc-why-edge-margin = margen a un borde duro
doc-why-fixture-margin = margen a lo que está en pie
doc-why-drain = sumidero, tapa o hidrante con su margen
doc-why-swing = por encima gira una puerta o portón
doc-why-door-floor = suelo libre ante una puerta o portón
doc-why-route = paso que debe quedar libre
doc-why-remark = quien midió lo deja libre
doc-column-thing = qué
doc-column-why = por qué
doc-column-area = área, { $unit }²
doc-column-rule = regla
doc-column-source = fuente
doc-assumptions = Qué da por supuesto este informe
doc-assume-level = Las medidas son horizontales: en cuesta, la cinta da algo de más.
doc-assume-doubt = La duda de cada medida es la indicada para la cinta; un cero equivocado o una cinta estirada desplazan todas por igual y aquí no se ven.
doc-assume-free = Lo que queda libre se traza desde los bordes, así que el suelo libre es tan seguro como el patio.
doc-assume-straight = Los lados van rectos entre esquinas.
doc-assume-crown = Las copas de los árboles son un signo; solo se midió el tronco.
doc-assume-no-north = No se conoce el norte, así que no se calcula la sombra.
doc-before-you-go-on = Antes de seguir
doc-care-advice = Pregunte antes: las normas locales, las de licencia, la ley de accesibilidad, las etiquetas y las fichas de seguridad van por delante de este plano; acuda a un profesional titulado donde haga falta.
doc-care-leave = Obtenga permiso escrito del propietario y averigüe quién más usa o cuida el suelo.
doc-care-zones = Mantenga las marcas y a los niños que esperan fuera de las zonas dibujadas; revíselas si se mueve el equipo.
doc-care-doors = Deje libres puertas, portones, salidas de incendio y pasos accesibles, al pintar y después.
doc-care-children = Deje fuera a los niños mientras se trabaja y ponga a alguien de guardia.
doc-care-surfacing = No pinte suelos de caucho, sumideros, tapas, hidrantes ni señales.
doc-care-old-paint = Haga analizar la pintura vieja antes de lijarla, rasparla o quemarla: puede contener plomo o cromatos.
doc-care-bar = Mida la barra de escala impresa antes de tomar una medida del plano, y la tercera cinta antes de pintar.
doc-care-tapes = Deje las cintas planas, señálelas y recójalas al acabar: hacen tropezar. La cinta de acero corta y conduce: aléjela de la electricidad.
doc-care-traffic = Pare antes el tráfico: conos y un vigilante donde puedan llegar coches o repartos.
doc-care-hot = Toque antes cinco segundos con el dorso de la mano el suelo calentado por el sol; trabaje temprano, con calzado, y beba agua.
doc-care-doors-taping = Deje libres puertas, portones y salidas de incendio mientras mide; mida sin niños en el patio.
doc-sources = Cifras y fuentes usadas
doc-sources-how = Publicada: vista en una fuente publicada. Práctica común: sin fuente. De memoria: sin comprobar. Las cifras se describen en inglés.
doc-standing-published = publicada
doc-standing-practice = práctica común
doc-standing-memory = de memoria
doc-standing-replaced = { $standing }; sustituida en este proyecto
doc-column-what = qué
doc-column-figure = cifra
doc-column-standing = aval

# Hoja de medidas
doc-tape-title = Medir { $name } con cinta
doc-field-who = miden
doc-field-date = fecha
doc-field-tape = cinta
doc-tape-sketch = Dónde medir
doc-tape-sketch-alt = Croquis con los puntos { $names } y las líneas que hay que medir entre ellos; la tabla de abajo las da en el orden del recorrido.
doc-tape-sketch-rough = Croquis con la forma del patio, sin escala. Las flechas muestran el recorrido.
doc-tape-sketch-order = Croquis antes de medir nada: los puntos siguen el orden del recorrido, no la forma del patio. Las flechas muestran el recorrido.
doc-before-you-tape = Antes de medir
doc-hint-pull = Tire siempre igual: { $glass } N en la cinta de fibra, { $steel } N en la de acero.
doc-hint-flat = Ponga la cinta en el suelo, recta y sin torcer; una curva de un palmo estropea la medida.
doc-hint-zero = Mire dónde está el cero de la cinta: en el gancho, en la anilla o más allá. Use siempre la misma cinta.
doc-hint-aloud = Una persona lee en voz alta; otra lo repite y lo apunta. Primero los metros o pies enteros.
doc-hint-spot = Marque cada punto en el suelo y mida siempre al mismo sitio.
doc-hint-hidden = Si algo se interpone, deje esa línea y mida otra hasta el mismo punto.
doc-column-at = desde
doc-column-to = hasta
doc-column-write = medida
doc-column-note = nota
doc-tape-first = Empiece por estas
doc-tape-readings = Medidas en el orden del recorrido
doc-tape-how = Cada lado se mide dos veces, desde extremos opuestos, y cada punto tiene al menos { $least } medidas, para que un error se vea. No copie la primera medida: lea otra vez.
doc-tape-more = Más medidas
doc-tape-file = Copie las medidas en tape.csv, una por fila tal como se leyeron: from, to, reading.
doc-tape-offsets = Puntos fuera de una línea
doc-tape-offsets-how = Extienda una cinta a lo largo de la línea. Trace un ángulo recto con un triángulo 3-4-5 o con el giro más corto, lea a lo largo de la línea hasta su pie y después hacia fuera: a la izquierda según se camina es más, a la derecha es menos.
doc-column-line = línea
doc-column-measure = lectura
doc-measure-along = a lo largo
doc-measure-left = a la izquierda
doc-line = de { $from } a { $to }
