# Los papeles de un plan: palabras comunes
page-kind-papers = plan
page-kind-plan = plano del patio
page-kind-trial = probar con tiza
page-paint-chalk = Chalk (tiza)
page-paint-straw = Straw (paja)
page-paint-harebell = Harebell (campanilla)
page-paint-sedge = Sedge (junco)
page-paint-hip = Hip (escaramujo)
page-paint-madder = Madder (granza)
page-paint-sloe = Sloe (endrina)
page-family = { $family ->
    [court] Rayuela de saltos
    [brook] Arroyo
    [spots] Huellas de paso
    [pair] Saltos en pareja
    [ring-sets] Grupos de aros
    [star] Estrella de direcciones
    [number-line] Recta de números
    [number-court] Tablero de números
    [letter-court] Tablero de letras
    [fields] Campos de forma y color
    [compass] Rosa de los giros
    [straight-lane] Carril recto
    [wave-lane] Carril ondulado
    [zigzag-lane] Carril en zigzag
    [straight-line] Línea recta
    [wave-line] Línea ondulada
    [zigzag-line] Línea en zigzag
    [spiral-lane] Carril en espiral
    [eight-lane] Carril en ocho
    [labyrinth-lane] Carril de laberinto
    [balance-lines] Líneas de equilibrio
    [twin-tracks] Pistas gemelas
    [gallop-prints] Huellas de galope
    [skip-prints] Huellas de salto alternado
    [hop-prints] Huellas a la pata coja
    [leap-prints] Huellas de zancada
    [jump-prints] Huellas de salto
   *[other] { $family }
 }
page-group = { $group ->
    [all] todo el grupo
    [younger] el tercio menor
    [middle] el tercio medio
    [older] el tercio mayor
    [rest] quienes faltan
    [rest-2] otros que faltan
    [rest-3] los últimos que faltan
   *[other] { $group }
 }
page-name-group = { $name } para { $group }
page-name-own = { $family } «{ $name }»
page-gait = { $gait ->
    [jump] saltar con los dos pies
    [hop] saltar a la pata coja
    [leap] zancada
    [gallop] galope
    [slide] paso lateral
    [skip] saltar alternando
    [court] pata coja y salto
    [run] correr
    [walk] andar
   *[other] { $gait }
 }
page-on-foot = { $skill }, guía el pie { $foot ->
    [R] derecho
   *[L] izquierdo
 }
page-both-feet = { $skill }, guía cualquier pie
page-column-marking = marca
page-column-cost = coste, { $money }
page-column-ground = suelo, { $unit }²
page-column-why = por qué
page-column-rule = regla
page-column-kind = esta
page-column-held = se cumple
page-column-limit = se pide
page-column-is = hay

# El plano
page-row-markings = marcas
page-list = Marcas
page-list-size = { $long } por { $broad }
page-list-envelope = suelo que pide en uso
page-plan-lies = { $name } a { $x } a lo largo y { $y } a lo ancho
page-plan-told = Plano de { $name } a { $scale } con sus marcas en color, cada una con un número y, a trazos, el suelo que pide en uso: { $markings }. Las zonas que quedan libres van rayadas en gris; cotas, escala gráfica y cajetín.

# Una página por marca
page-number = número { $number } en el plano
page-painted-alt = { $name }: así se pinta, en { $colours }, con el suelo que pide en uso a trazos.
page-painted-caption = Así se pinta sobre { $ground ->
    [asphalt] asfalto
   *[concrete] hormigón
 }, { $scale }. A trazos: el suelo que pide en uso.
page-fact-for = medida para
page-fact-skills = enseña
page-fact-lengths = medidas
page-fact-cells = uso
page-fact-gives = da
page-fact-cost = cuesta
page-fact-lies = está a
page-fact-ground = pide
page-fact-words = forma
page-fact-words-not = no forma
page-words = { $words } ({ $many } de { $of } palabras; el salto más largo, { $longest })
page-cells = { $cells ->
    [one] una casilla
   *[other] { $cells } casillas
 }, { $tracks ->
    [one] un niño cada vez
   *[other] { $tracks } niños a la par
 }
page-tracks = { $tracks ->
    [one] un niño cada vez
   *[other] { $tracks } niños a la par
 }
page-gives = { $minutes } minutos por semana del tiempo de estación de un niño medio
page-cost = { $cost } en pintura y cinta
page-lies = { $x } a lo largo del primer lado, a { $y } de él, girada { $turn }° hacia la izquierda{ $mirrored ->
    [yes] , en espejo
   *[no] { "" }
 }
page-used = Así se usa
page-easiest = Lo más fácil para un niño de { $years } años: { $skill }, { $contacts ->
    [one] un apoyo
   *[other] { $contacts } apoyos
 }; sale { $share } veces de 100.
page-hardest = Lo más difícil que aún sale: { $skill }, { $contacts ->
    [one] un apoyo
   *[other] { $contacts } apoyos
 }; { $share } veces de 100 para el mismo niño de { $years } años.
page-only = Para un niño de { $years } años: { $skill }, { $contacts ->
    [one] un apoyo
   *[other] { $contacts } apoyos
 }; sale { $share } veces de 100.
page-no-route = No se conoce ningún recorrido a pie para este grupo; por eso no se dibuja ninguno.
page-drawn-at = { $scale }, medidas en { $unit }
page-suits = A quién le va bien
page-suits-how = Tanto por ciento de los niños de cada edad, y cuántos son. En los dibujos, el pie derecho va lleno y el izquierdo abierto. A cada niño le va bien con su propia probabilidad; la horquilla contiene su número 90 veces de 100 (una cuenta de Poisson-binomial).
page-suits-nobody = No se calculó a ningún niño de este grupo sobre esta marca.
page-suits-age = edad, años
page-suits-well = le va bien
page-suits-bracket = intervalo del 90 %
page-suits-easy = muy fácil
page-suits-hard = fuera de alcance
page-suits-told = a los { $age } años, de { $of } niños { $well } bien (intervalo del 90 %: { $low } a { $high }), { $easy } muy fácil, { $hard } fuera de alcance
page-care-clear = Mantenga libre de personas y cosas el suelo a trazos mientras se usa.
page-care-turn = Un niño cada vez en cada recorrido: el siguiente sale cuando el anterior lo ha dejado.
page-care-lane = Todos van en el mismo sentido, y quien espera se aparta del final, donde los demás frenan.
page-care-watch = Un adulto guía y mira. No se usa con el suelo mojado, helado o caliente.

# Una página para la dirección
page-director-title = { $name }: el plan en una página
page-no-layout = Este registro aún no contiene ninguna disposición.
page-gain = { $markings ->
    [one] Una marca pintada sirve
   *[other] { $markings } marcas pintadas sirven
 } a { $children ->
    [one] un niño
   *[other] { $children } niños
 } de { $low } a { $high } años. En { $sessions } sesiones guiadas por semana de { $minutes } minutos, { $markings ->
    [one] da
   *[other] dan
 } al grupo el { $share } % de la práctica que le desearíamos. La pintura y la cinta cuestan unos { $cost }.
page-gains = Qué gana el grupo
page-gains-how = Cuánto de la práctica deseada recibe cada edad en una semana media. «Ninguno» quiere decir que esa destreza aún no se le pide a esa edad.
page-column-skill = destreza
page-column-wanted = deseado, min
page-column-age = { $age } años ({ $count })
page-column-all = todos
page-buy = Qué cuesta y qué hay que comprar
page-buy-told = Unos { $cost } en pintura y cinta de enmascarar. Compre pintura de suelo antideslizante, dos manos: { $paints }; cinta: { $tape }. Los botes enteros, la imprimación y las herramientas van aparte.
page-buy-left = Del presupuesto de { $budget } quedan { $left } para ello.
page-need = Cinco casillas que le pedimos
page-need-leave = La propiedad acepta por escrito que pintemos, y dónde.
page-need-codes = La autoridad de licencias, bomberos y accesibilidad no se oponen a este plan.
page-need-surface = El suelo está sano, limpio y tiene la edad que pide la etiqueta; la pintura vieja se ha analizado.
page-need-days = Hay dos días secos fijados sin niños en el patio, y alguien cuida la puerta.
page-need-money = El dinero está, y una persona guía las sesiones las primeras semanas.
page-sure = Qué seguridad tenemos
page-bound = El plan da el { $value } %; ninguna elección de marcas podría dar más del { $bound } %. Está a menos del { $gap } % de lo mejor posible.
page-binds = { $of ->
    [money] { $more } más de dinero: { $change } % más de práctica
    [ground] { $more } más de suelo libre: { $change } % más de práctica
    [time] { $more } minutos más por sesión: { $change } % más de práctica
   *[staff] { $more } adulto más fuera: { $change } % más de práctica
 }
page-binds-these = Qué daría más: { $what }.
page-binds-nothing = Ni más dinero ni más suelo, tiempo o personal lo cambiarían de forma notable.
page-sure-children = Lo que sabe hacer cada niño se calculó con medias publicadas de su edad, salvo que alguien lo midiera. Pruebe antes las figuras con tiza: la hoja de prueba dice cómo.
page-sure-rules = { $broken ->
    [0] Se cumplen todas las reglas de seguridad a las que se sometió el plan
    [one] No se cumple una regla obligatoria
   *[other] No se cumplen { $broken } reglas obligatorias
 }; { $unmet ->
    [0] se cumplen todos los deseos
    [one] un deseo no se cumple
   *[other] { $unmet } deseos no se cumplen
 }. La última página los enumera.
page-without = Solo para el personal, aún sin estación adecuada: { $lines }. Dé a estos niños un juego guiado propio.
page-without-some = { $skill }: { $who }
page-without-all = { $skill }: todo el grupo
page-without-nobody = Cada niño tiene al menos una estación adecuada para cada destreza que se le pide.
page-care-codes = Pregunte antes: las normas locales, las licencias, la accesibilidad y las etiquetas van por delante de este plan.
page-care-children = Nadie entra mientras se trabaja ni hasta que la pintura esté seca y agarre en mojado.
page-care-wet = La pintura sola no enseña: un adulto guía, y cierra la marca que esté gastada o resbale.

# Lo que quedó fuera, el presupuesto, las reglas
page-left-out = Qué quedó fuera y por qué
page-left-out-none = No quedó fuera nada que pudiera pintarse.
page-left-out-sizes = { $name }, { $sizes } tamaños
page-left-out-how = Todo esto se calculó con el mismo grupo, suelo y precios.
page-curve = Qué daría otro presupuesto
page-curve-how = Línea llena: el mejor plan hallado con cada presupuesto. A trazos: lo que ningún plan de ese presupuesto puede superar.
page-curve-bound = tope
page-curve-value = hallado
page-curve-budget = presupuesto, { $money }
page-curve-ours = este presupuesto
page-curve-told = con { $budget }: { $value } % hallado, { $bound } % como mucho
page-audit = Las reglas, frente al plan
page-audit-how = Las reglas obligatorias deben cumplirse; las deseables son deseos que el plan pondera.
page-rule-must = obligatoria
page-rule-should = deseable
page-audit-all = Se cumplen todas las reglas y todos los deseos.
page-audit-unmet = Las que no se cumplen:
page-whole-layout = todo el plan

# Primero la tiza
page-trial-title = { $name }: primero la tiza
page-trial-why = Antes de pintar nada, cuatro niños prueban dos figuras en tres tamaños, { $tries } intentos cada uno. Lleva media hora con tiza o cinta, y muestra qué tamaño pide este grupo.
page-trial-chalk = Qué trazar
page-trial-varies = Trácela tres veces. Lo que cambia: { $what }.
page-trial-told = { $name } en contorno; { $what } se traza a { $sizes }.
page-trial-tries = Quién probó y qué salió
page-trial-how = { $tries } casillas por tamaño. Marque con un visto el intento que salió: todos los apoyos dentro, sin caída, sin perder el ritmo. Con una cruz, el que no. Deje vacía la casilla del intento no hecho. Mezcle los tamaños; empiece por A.
page-trial-child = código
page-trial-figure = figura
page-trial-size = tamaño { $letter }
page-trial-back = Páselo a trials.csv, una fila por niño, figura y tamaño: n son los intentos hechos, good los que salieron. Encabezado: { $head }. Una fila, por ejemplo: { $row }. Después, planifique de nuevo.
page-trial-care-warm = Caliente antes, y deje que cada niño mire una vez antes de probar.
page-trial-care-dry = Solo en suelo seco y barrido, con calzado que agarre, y libres el recorrido y dos metros tras su final.
page-trial-care-stop = Pare si un niño está cansado, tiene miedo o no quiere más: eso no es un intento fallido.
page-base-title = { $name }: diez minutos para empezar
page-base-why = Bastan de ocho a diez niños. Lo que alcancen sustituye a las medias, y el plan le va mejor a este grupo.
page-base-line = Trace una línea y tienda desde ella una cinta métrica, plana en el suelo.
page-base-jump = Salto: los dos pies tras la línea, saltar lo más lejos posible, caer con los dos. Tres veces; mida de la línea al talón más cercano.
page-base-hop = Cinco saltos a la pata coja: de pie sobre un pie tras la línea, cinco saltos seguidos sobre él. Mida de la línea al talón del último apoyo. Una serie con cada pie; una segunda y tercera si hay tiempo.
page-base-cannot = Escriba 0 si un niño aún no puede dar cinco saltos con ese pie; deje vacía la casilla si no probó.
page-base-feet = Derecha e izquierda son las del niño. Anime igual en cada intento.
page-base-height = altura { $unit }
page-base-column-jump = tres saltos { $unit }
page-base-column-right = pie derecho, cinco { $unit }
page-base-column-left = pie izquierdo, cinco { $unit }
page-base-unit-cm = (cm)
page-base-unit-in = (in)
page-base-back = Páselo a children.csv, una fila por niño: height, la altura; el mejor salto en jump_best; la mejor serie en hops_right y hops_left. Escriba la unidad tras cada cifra. En este grupo no hay niños de menos de { $youngest } años.
page-base-care-names = Escriba códigos, nunca nombres, y guarde la hoja con el personal.

# Lo que el grupo ha mostrado
page-learned = Lo que el grupo ha mostrado
page-learned-how = Hasta dónde lleva un vuelo cómodo. Punto abierto y trazos: lo que dice la edad. Lleno: lo que se sabe ahora, con la mitad central gruesa y nueve décimas finas. Nada de esto es una nota: dice cuánta confianza merece el plan.
page-learned-never = Los intervalos hablan de un vuelo. Un mal día, o uno bueno, los mueve; más intentos en la prueba con tiza los acortan.
page-learned-child = niño
page-learned-years = edad
page-learned-seen = visto
page-learned-reach = alcance
page-learned-before-now = antes / ahora, { $unit }
page-learned-measured = { $count ->
    [one] mejor medido
   *[other] { $count } mejores medidos
 }
page-learned-tries = { $good } de { $n } intentos
page-learned-checks = { $met } de { $n } criterios
page-learned-others = solo los demás
page-learned-told = { $child }: { $seen }; antes { $before }, ahora { $now }, de { $low } a { $high }.
page-learned-age = edad { $age }
page-learned-group = grupo { $group }
page-learned-class = el grupo
page-learned-shared = en común
page-learned-data = lo dicen
page-learned-told-by = { $told } de { $of } niños, { $tries } intentos
page-learned-prior = antes, { $unit }
page-learned-now = ahora, { $unit }
page-learned-interval = nueve décimas

# La galería de la documentación
gallery-page = # La galería
    {""}
    Todas las familias, medidas por el programa para ocho niños de tres, cuatro y cinco años (a mitad del año), dibujadas por el propio
    programa tal como se pintan sobre asfalto. A trazos, el suelo que piden en uso. Los tamaños descansan en medias de la edad: un grupo
    medido recibe los suyos. Se dibuja de nuevo con `CHALKYARD_BLESS=1 cargo test --release -p document --test gallery`.
gallery-says = { $name } a la medida de tres, cuatro y cinco años, sobre asfalto, con el suelo que pide en uso.
gallery-age = { $years } años, { $scale }

# Replanteo
page-kind-setout = replanteo
page-setout-title = { $name }: replanteo
page-setout-care-dry = Solo sobre suelo seco y barrido. Nadie ajeno y ningún niño mientras haya cintas tendidas.
page-setout-care-ends = Cintas tensas y a nivel, con el gancho en el punto medido. Nadie pasa por encima de una cinta tensa.
page-setout-care-check = No pinte desde una marca cuya comprobación falla más de lo que permite la hoja.
page-setout-how-hook = Enganche dos cintas en los dos puntos. Crúcelas en las dos longitudes. Trace con tiza una cruz donde se juntan.
page-setout-how-left = Desde el primer punto, mirando al segundo, la marca queda a su izquierda.
page-setout-how-check = Lea la tercera cinta y apúntela. Si falla más de lo permitido: mida otra vez y, si sigue, repita la marca.
page-setout-how-figure = Cuando valgan todas las marcas de una figura, tire su línea de tiza y siga desde ella (últimas páginas).
page-setout-walk = { $points } marcas, { $walked } de camino de la primera a la última. Longitudes redondeadas a { $step }.
page-setout-number = n.º
page-setout-mark = marca
page-setout-what = qué hay ahí
page-setout-first = primera cinta
page-setout-second = segunda cinta
page-setout-third = control
page-setout-reads = lee
page-setout-role = { $role ->
    [origin] lugar: { $feature }
    [direction] giro: { $feature }
   *[check] comprobación: { $feature }
 }
page-setout-feature = { $kind ->
    [cell] centro de la casilla { $name }
    [lane-start] inicio del carril { $name }
    [lane-end] fin del carril { $name }
    [lane-far] punto lejano del carril { $name }
    [bend] curva del carril
    [wait] sitio de espera { $name }
   *[corner] esquina de la forma { $name }
 }
page-setout-within = { $limit } como mucho
page-setout-move = Lleve la cinta { $tape } a { $to }
page-setout-instead = Si un punto medido está tapado
page-setout-instead-how = Si ese día hay algo encima de un punto, use estas dos cintas. La señal queda a la izquierda como antes.
page-setout-without = sin
page-setout-map = El plano con los puntos medidos de los que cuelgan las cintas, como cuadrados, y las marcas como cruces con su número en el recorrido.
page-setout-figures = De las marcas a las figuras
page-setout-figures-how = La línea de tiza va de la primera marca de una figura a la segunda. Las longitudes cuentan desde la primera; izquierda y derecha, mirando a lo largo.
page-setout-chalk = Tire una línea de tiza entre { $ends }: { $length }.
page-setout-square = Un ángulo recto en la primera marca: { $along } por la línea, { $aside } a la { $side ->
    [left] izquierda
   *[right] derecha
 }, { $across } de extremo a extremo.
page-setout-span = Compruebe entre { $ends }: { $length }, con { $limit } de diferencia como mucho. Marca __________
page-setout-along = a lo largo
page-setout-left = a la izquierda
page-setout-right = a la derecha
