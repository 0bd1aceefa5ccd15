# Un curso para el personal del patio
# Lo que se marca en una secuencia
course-sees-jump-leaves = Los dos pies dejan el suelo en el mismo momento.
course-sees-jump-flies = Cada salto vuela: por un momento no hay pie en el suelo.
course-sees-jump-lands = Los dos pies caen en el mismo momento.
course-sees-jump-stays = Tras la última caída los pies se quedan donde están.
course-sees-hop-same-foot = Cae el mismo pie desde el primer salto hasta el último.
course-sees-hop-free-foot = El pie libre nunca toca el suelo.
course-sees-hop-goes-on = Cada salto avanza.
course-sees-hop-beat = Un salto sigue a otro sin descanso.
course-sees-leap-runs-up = La carrera entra en la zancada sin parar.
course-sees-leap-other-foot = Un pie despega y el otro cae.
course-sees-leap-floats = La zancada flota: por un momento no hay pie en el suelo.
course-sees-leap-runs-on = Después de caer la carrera sigue.
course-sees-gallop-lead = El mismo pie guía de principio a fin.
course-sees-gallop-behind = El pie de atrás alcanza y nunca pasa al de delante.
course-sees-gallop-spring = Cada paso del pie de delante llega desde el aire.
course-sees-gallop-beat = El ritmo es largo, corto: no parejo como al correr.
course-sees-slide-square = Las puntas siguen perpendiculares al camino.
course-sees-slide-uncrossed = Los pies nunca se cruzan.
course-sees-slide-spring = Cada paso del pie que guía llega desde el aire.
course-sees-slide-flows = Paso, junta, paso, junta: sin parar.
course-sees-skip-step-hop = Cada paso tiene su salto en el mismo pie.
course-sees-skip-sides = Los saltos cambian de lado cada vez: derecho, izquierdo, derecho, izquierdo.
course-sees-skip-beat = Tras cada salto el otro pie pisa enseguida.
course-sees-run-floats = Cada paso llega desde el aire.
course-sees-run-line = Los pies caen cerca de la línea.
course-sees-run-even = El paso izquierdo y el derecho duran lo mismo.

# Fallos de la práctica
course-fault-jump-leaves-one-first = Un pie deja el suelo antes que el otro.
course-fault-jump-steps-on = Un pie da otro paso después de caer.
course-fault-hop-on-the-spot = Después del primer salto salta en el lugar.
course-fault-hop-rests = Descansa entre saltos.
course-fault-leap-same-foot = Despega y cae con el mismo pie.
course-fault-leap-stops-after = Se para después de caer.
course-fault-gallop-drags = Los pies se arrastran: sin rebote entre pasos.
course-fault-slide-stops = Se para entre pasos.
course-fault-skip-misses-hops = Dos pasos no tienen salto.
course-fault-skip-one-foot = Un solo pie hace todos los pasos y saltos.
course-fault-run-limps = Un pie cae tarde cada vez.

# Antes y después
course-can-show = Puedo mostrar cada destreza en nuestras marcas para que los niños la copien.
course-can-see = Puedo ver qué parte de una destreza un niño todavía no hace.
course-can-cue = Puedo dar una sola indicación corta que responda a lo que veo.
course-can-level = Puedo hacer una marca más fácil o más difícil para un niño mientras los demás siguen.
course-can-wait = Puedo lograr que ningún niño espere más de 15 segundos.
course-can-include = Puedo incluir a un niño en silla de ruedas, que ve poco o que hoy no quiere.
course-know-paint = Un patio tiene marcas nuevas y nadie guía el juego en ellas. ¿Qué es probable?
course-know-paint-a = Los niños se mueven más durante años.
course-know-paint-b = La actividad apenas cambia; la diferencia la hacen los adultos que guían.
course-know-paint-c = Los niños se mueven menos.
course-know-paint-why = En el ensayo preescolar que conocemos, las marcas solas no aumentaron la actividad.
course-know-gallop = Un niño galopa y el pie de atrás cae delante del otro. ¿Qué es?
course-know-gallop-a = Todavía no es galope: el pie de atrás pasa.
course-know-gallop-b = Un galope guiado por el otro pie.
course-know-gallop-c = Saltar alternando.
course-know-gallop-why = En el galope el mismo pie va siempre delante; el de atrás lo alcanza por detrás.
course-know-skip = ¿Qué viene antes de saltar alternando?
course-know-skip-a = El paso lateral y la zancada.
course-know-skip-b = Nada: la mayoría los hace a los tres años.
course-know-skip-c = El galope y saltar firme a la pata coja con cada pie.
course-know-skip-why = Son paso y salto por turnos; pocos lo hacen a los tres o cuatro años, a los cinco lo intenta la mitad.
course-know-hop = La mayoría del grupo tiene tres años. ¿Qué conviene en un camino a la pata coja?
course-know-hop-a = Diez saltos, todos iguales.
course-know-hop-b = Dos o tres saltos, y luego cambiar de pie o descansar.
course-know-hop-c = Solo saltos con el pie más débil.
course-know-hop-why = Menos de la mitad de los niños de tres años se sostiene cinco segundos en un pie.
course-know-cue = Un niño todavía no hace bien tres cosas. ¿Qué le dice?
course-know-cue-a = Una indicación, y la misma en el intento siguiente.
course-know-cue-b = Las tres, para que nada se olvide.
course-know-cue-c = Nada, hasta que termine la clase.
course-know-cue-why = Una indicación a la vez se puede seguir; tres, no.
course-know-fit = Un hueco se cruza bien nueve de cada diez veces, sin esfuerzo. ¿Y ahora?
course-know-fit-a = Sirve así para todo el año.
course-know-fit-b = Es demasiado difícil; hay que estrecharlo.
course-know-fit-c = Ofrecer uno más ancho al lado: lo justo es de cinco a nueve de cada diez, con algo de reto.
course-know-fit-why = Lo que siempre sale entrena poco; lo que casi nunca sale desanima.
course-know-runout = Dos carriles de carrera se enfrentan y vienen niños de ambos lados. ¿Qué hace?
course-know-runout-a = Pedir cuidado.
course-know-runout-b = Ponerlos en un solo sentido, o cerrar uno.
course-know-runout-c = Dejar pasar primero al más rápido.
course-know-runout-why = Dos que corren de frente necesitan más de diez metros para parar; los pequeños reaccionan tarde.
course-know-unwilling = Un niño se aparta y después dice "luego". ¿Qué hace y qué anota?
course-know-unwilling-a = Insistir hasta que participe.
course-know-unwilling-b = No anotarlo, para que no falte nada.
course-know-unwilling-c = Parar por hoy; "no quiso" es un resultado.
course-know-unwilling-why = Dos señales son un no por hoy. Se anota como lo que es, no como un hueco.
course-know-record = La lluvia quitó media sesión y faltaron dos niños. ¿Qué anota?
course-know-record-a = Lo previsto, lo realizado y lo recibido, cada cosa como fue.
course-know-record-b = Una sesión realizada: ya había empezado.
course-know-record-c = Nada, porque no valió.
course-know-record-why = Lo previsto no es lo que ocurrió; solo las tres cosas por separado explican un resultado.

# Puntos esenciales de una sesión como se diseñó
course-core-marking = La marca adecuada para este grupo.
course-core-shown = Mostrado antes que explicado.
course-core-moving = Todos en movimiento antes de { $seconds } segundos.
course-core-wait = Nadie espera más de { $seconds } segundos.
course-core-cue = Una indicación, usada dos veces.
course-core-levels = Se ofrece una forma más fácil y otra más difícil.
course-core-sight = Todos los niños a la vista, todo el tiempo.
course-core-ending = Termina con un elogio o una elección.

# Inducción
course-induction-walk = Recorra usted cada marca en el sentido de las flechas. Diga en voz alta su destreza.
course-induction-safe = Párese en las zonas de frenado. Diga dónde paran los niños, qué se cierra si está mojado, caliente o resbaladizo, y a quién se avisa.
course-induction-lead = Guíe una tarjeta con un colega: muestre, que todos se muevan, una indicación, más fácil y más difícil.
course-induction-see = Mire a un niño en una sola línea de una destreza. Diga sí o no, y compare.
course-induction-who = Dónde cuelgan las tarjetas, qué se anota y qué nunca, a quién preguntar.

# La página
course-title = { $yard }: un curso corto para el personal
course-nav = En esta página
course-intro = Cerca de una hora, por partes y en cualquier orden. Sus respuestas quedan en esta página: nada se envía, nada se guarda, y al cerrarla se olvidan. Para conservarlas, guárdelas en un archivo.
course-before = Antes de empezar
course-after = Después del curso
course-after-says = Los mismos puntos otra vez. En la segunda columna diga cómo era de verdad antes del curso, ahora que sabe más.
course-rate = ¿Qué tan seguro se siente? 0: no puedo en absoluto. 100: seguro que puedo.
course-item = Punto
course-now = Ahora, de 0 a 100
course-then = Antes del curso, como lo veo hoy, de 0 a 100
course-questions = ¿Qué sabe usted?
course-keep = Conservar como mis respuestas de antes
course-kept = Conservadas mientras esta página esté abierta.
course-compare = Comparar con antes
course-lacking = Respuestas que faltan: { $count }.
course-no-before = No hay respuestas de antes con que comparar.
course-gain = Confianza, media de seis: { $before } antes, { $after } ahora: { $gain } más.
course-gain-then = Frente a cómo lo ve hoy: { $gain } más.
course-gain-claim = Cuente la menor: { $gain }. Lo que uno dice de sí mismo cambia al aprender.
course-known = Preguntas acertadas: { $before } antes, { $after } ahora, de { $of }.
course-right = Correcta: { $answer }
course-skills = Las destrezas
course-skills-says = Qué es cada una, cómo se ve al principio y después, y qué decir. Abra una destreza y reproduzca sus pies, bien hecha y en formas iniciales.
course-what = Qué es
course-early = Al principio
course-later = Con práctica
course-cue = Indicación
course-seen = Lo que ve
course-say = Lo que dice
course-easier = Más fácil
course-harder = Más difícil
course-trains = Aquí la entrenan
course-trains-none = Aquí ninguna marca la entrena: practíquela en suelo libre.
course-practice = Práctica de observación
course-practice-says = Mire una secuencia cuantas veces quiera, primero a velocidad normal. Marque en cada línea si los pies lo hacen. Puede haber hasta tres fallos, o ninguno. Las respuestas se muestran al final de la ronda.
course-practice-words = Sin ver: avance con las flechas en la barra de tiempo. Cada caída se dice con su lugar y con el tiempo que el pie se queda, de modo que cada línea se puede marcar por las palabras.
course-spot = { $side ->
    [L] Izquierdo
   *[R] Derecho
 }: en el suelo de { $from } a { $to } s, a { $along } cm por el camino, { $aside } cm a la { $hand ->
    [left] izquierda
   *[right] derecha
 } de la línea, puntas a { $toes } grados del camino.
course-keeping = Antes de que sus marcas cuenten: { $hours } horas con secuencias y { $sessions } sesiones junto a un observador formado, { $rounds } seguidas con acuerdo suficiente. Para seguir listo: dos observadores miran el { $double } % de las sesiones; practique otra vez si los últimos { $pairs } pares dan una kappa menor de { $kappa }, o tras { $away } meses fuera.
course-round-of = Ronda { $round } de { $of }
course-clip-of = Secuencia { $clip } de { $of }: { $skill }
course-leads = { $foot ->
    [R] primero el pie derecho
   *[L] primero el pie izquierdo
 }
course-yes = Sí
course-no = No
course-next = Secuencia siguiente
course-finish = Terminar la ronda
course-unmarked = Marque antes todas las líneas: faltan { $count }.
course-result = Resultado de la ronda { $round }
course-agree = { $met } de { $of } marcas coinciden con la verdad: { $share } %. Con tan pocas, también cabría de { $low } a { $high } %.
course-kappa = Kappa, el acuerdo más allá del azar: { $kappa } ({ $low } a { $high }): { $band }.
course-kappa-none = No se puede calcular kappa: todas las marcas son iguales.
course-ac1 = AC1, más estable cuando casi todas las marcas son iguales: { $ac1 } ({ $low } a { $high }).
course-band = { $band ->
    [poor] pobre
    [good] de regular a bueno
   *[excellent] excelente
 }
course-ready = Listo para observar junto a un observador formado: { $rounds } rondas seguidas con acuerdo suficiente. Tras { $sessions } sesiones lado a lado con el mismo acuerdo sus marcas cuentan.
course-not-ready = Todavía no. Rondas buenas seguidas que faltan: { $rounds }.
course-want-agreement = El acuerdo fue de { $got } %; se pide al menos { $wanted } %.
course-want-kappa = Kappa fue { $got }; se pide al menos { $wanted }.
course-more-pairs = La kappa de las últimas rondas se conoce con un margen de { $half } tras { $pairs } marcas más.
course-close = La kappa de las últimas rondas se conoce con un margen de { $half }.
course-marks = Sus marcas y la verdad
course-line = Lo que hacen los pies
course-yours = La suya
course-truth = La verdad
course-same = coincide
course-differs = difiere
course-look = Ver otra vez: secuencia { $clip }, { $skill }
course-looking = Otra vez la secuencia { $clip }, con todas sus palabras: { $says }
course-next-round = Ronda siguiente
course-again = Empezar otra vez con la ronda 1
course-certificate = Constancia de asistencia
course-certificate-says = El nombre solo se imprime. No se guarda ni está en el archivo guardado.
course-name = Nombre
course-place = Lugar
course-day = Fecha
course-attended = asistió al curso sobre destrezas de movimiento y marcas pintadas en { $yard }:
course-contents = las destrezas y sus formas iniciales y posteriores; indicaciones, formas más fáciles y más difíciles; práctica de observación con secuencias conocidas; guiar una estación; uso seguro del patio.
course-attended-only = Dice que la persona estuvo presente. No es un título ni permiso para trabajar a solas con niños.
course-signature = Firma
course-print = Imprimir
course-print-this = Imprimir: { $what }
course-save = Guardar mis respuestas en un archivo
course-saved = Guardadas por su navegador, sin nombre.
course-papers = Cuando el curso ha terminado
course-induction = Inducción del personal nuevo: { $minutes } minutos
course-minutes = { $minutes } min
course-visit-sheet = Visita de acompañamiento
course-visit-says = Mire { $watch } minutos, hablen { $talk } minutos. Acuerden un solo cambio.
course-visits = Visitas
course-visit-kind = { $kind ->
    [together] Primera sesión, guiada juntos
    [week] Visita en la semana { $count }
   *[month] Visita a los { $count } meses
 }
course-visit-no-date = No hay fecha de inicio: escriba las fechas.
course-fidelity = Realizado como se diseñó
course-fidelity-says = Una columna por cada sesión visitada: sí, no, o una raya si no se pudo ver. Está bien con { $core } % de lo preguntado, y todo cumplido en { $strict } % de las sesiones.
course-fidelity-parts = También está bien si participó el { $reach } % de los niños presentes y se hizo el { $adherence } % de las sesiones y minutos previstos.
course-fidelity-lost = Previstas, realizadas y realizadas como se diseñó son tres números. Una sesión perdida tiene un motivo: tiempo, falta de personal, otro acto, patio ocupado, niños enfermos, olvido.
course-core = Punto esencial
course-seen-yes = Sí
course-seen-no = No
course-session = Sesión
course-planned = Previstas
course-held = Realizadas
course-designed = Como se diseñó
course-agreed = El único cambio acordado
course-done-last = ¿Se hizo el anterior?
course-next-date = Próxima fecha
course-travel = Minutos, viaje
course-order = En qué orden se presentan las marcas
course-order-says = Primero la más fácil para este grupo, y ninguna antes que las destrezas en que se apoya.
course-order-first = antes, en suelo libre: { $skills }
course-marking = Marca
course-skill = Destreza
course-pitched = Justa para
course-free = Juego libre, sin guía
course-free-stand = Un adulto se para en { $stand } y ve todo lo que está abierto.
course-free-none = No hay lugar desde donde un adulto vea entera una marca: guíe cada estación, o pongan dos adultos.
course-free-open = Abiertas
course-free-out = Se dejan fuera
course-free-why = { $why ->
    [meets] su camino rápido se encuentra con otro
    [run-out] su zona de frenado no está libre
    [hard] demasiado difícil sin un adulto
   *[unseen] no se ve entera desde allí
 }
course-free-care = Mire antes el suelo: nada se abre si está mojado, caliente a la mano, resbaladizo, levantado u ocupado. Las normas locales sobre personal y vigilancia van primero.
course-footer = Las secuencias se dibujan con cifras: no se filmó a ningún niño. Coincidir con secuencias es un comienzo; los niños son más rápidos y esconden los pies.
