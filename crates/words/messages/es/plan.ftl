# El plan en papel
paper-title = Un plan para { $name }
paper-foot = Plan de { $name }
paper-gain = { $markings ->
    [one] Una marca pintada da
   *[other] { $markings } marcas pintadas dan
 } a { $children } niños el { $share } % de la práctica que querríamos para cada uno, si los adultos guían los juegos. La pintura sola no aumentó la actividad en el único ensayo preescolar que conocemos (CAR09); lo que funciona es el uso guiado.
paper-week = Hacen falta { $sessions } sesiones por semana de { $minutes } minutos durante { $weeks } semanas. { $outings ->
    [one] Salen todos juntos
   *[other] Salen en { $outings } turnos
 }, como mucho { $together } a la vez.
paper-skills = Lo que practican los niños
paper-buy = Lo que cuesta
paper-sure = Qué seguridad tenemos
paper-need = Lo que necesitamos de usted
paper-column-skill = destreza
paper-column-wanted = deseado, min por semana
paper-column-planned = previsto, min por semana
paper-column-share = parte
paper-column-colour = color
paper-column-litres = litros
paper-column-marking = marca
paper-column-cost = coste
paper-column-why = por qué
paper-column-rule = regla
paper-column-want = se quiere
paper-column-is = hay
paper-column-unit = unidad
paper-column-age = { $age } años
paper-cost = Unos { $cost } { $currency } en pintura y cinta de enmascarar, de un presupuesto de { $budget }. Cinta: { $tape } m. Los botes enteros, la imprimación, la arena y las herramientas van aparte. Los precios son los del proyecto o, si no los nombra, los habituales.
paper-bound = Ninguna elección de estas marcas podría dar más del { $bound } % en este suelo, con este dinero y este tiempo: el plan queda a un { $gap } % de eso. Está demostrado, no supuesto.
paper-prior = Lo lejos que salta cada niño se apoya en tablas de crecimiento y en nuestro juicio hasta que alguien lo mida. Dibuje las figuras con tiza antes de pintar, apunte diez minutos de saltos y planee otra vez.
paper-binds = { $of ->
    [money] { $more } más de dinero añadiría un { $change } %.
    [ground] { $more } m² más de suelo libre añadirían un { $change } %.
    [time] { $more } minutos más por sesión añadirían un { $change } %.
   *[staff] { $more } personas más añadirían un { $change } %.
 }
paper-without = Solo para el personal: aún sin puesto { $children }. Planee el suyo a mano, en el mismo lugar y con los mismos niños.
paper-need-leave = El permiso del dueño por escrito, para este plan y estas pinturas.
paper-need-dates = Dos días secos en que se pueda cerrar el patio, y el día siguiente.
paper-need-money = El dinero de arriba y una persona que compre.
paper-need-people = De cuatro a seis adultos para pintar, y personal para las sesiones.
paper-need-closed = Un aviso a las familias, y el patio acordonado hasta que la pintura esté dura.
paper-care-advice = Pregunte primero: las normas locales, las licencias, la ley de accesibilidad y las etiquetas van antes que este plan; acuda a un profesional habilitado donde haga falta.
paper-care-zones = Mantenga las marcas y los lugares de espera fuera de las zonas de caída y de columpio; si se mueve un aparato, planee otra vez.
paper-care-routes = Deje libres puertas, cancelas, salidas de incendio y caminos accesibles, mientras se pinta y después.
paper-care-adult = Vigile el juego en las marcas como en cualquier aparato; retire la que se pele, se levante o resbale.
paper-left-out = Lo que quedó fuera, y por qué
paper-why = { $why ->
    [refused] el programa la rechaza
    [no-gain] no añadiría nada a esta clase
    [same-family] { $by } ya sirve a ese grupo
    [money] el dinero no llega
    [ground] el suelo libre no llega
    [no-place] no cabe entre las demás
   *[outdone] las demás rinden más sin ella
 }
paper-none = ninguna
paper-audit = Las reglas
paper-audit-told = Se comprobaron { $hard } reglas firmes; { $broken ->
    [0] se cumplen todas
   *[other] se rompen { $broken }
 }. { $unmet ->
    [0] Se cumplen todos los deseos.
    [one] Un deseo no se cumple.
   *[other] { $unmet } deseos no se cumplen.
 }
paper-marking = { $number }  { $name }
paper-lengths = Una figura { $family } con { $lengths }. Su salida está en x { $x }, y { $y } de la medición, girada { $turn } grados.
paper-painted-alt = La figura { $family } pintada, vista desde arriba, con su largo
paper-scale = 1:{ $scale }
paper-easiest = 1, la ruta más fácil elegida para un niño: { $gait }, { $child }, { $contacts } apoyos, sale { $share } veces de 100.
paper-hardest = 2, la más difícil: { $gait }, { $child }, { $contacts } apoyos, { $share } de 100. Pie derecho relleno, izquierdo hueco.
paper-strips = A quién le va mejor: { $gait }. Niños de cada edad.
paper-strip = { $well } de { $count } a su medida
paper-strip-key = lleno: a su medida; puntos: demasiado fácil; rayas: fuera de alcance; punto y corchete: número esperado e intervalo del 90 %
paper-suits = Niños a cuya medida está, esperados del total, con el intervalo del 90 %:
paper-suits-nobody = Ningún niño de esta clase puede usarla todavía.
paper-of = { $well } de { $count } ({ $low } a { $high })
paper-on-foot = { $skill }, { $foot ->
    [R] guía el derecho
   *[L] guía el izquierdo
 }
paper-skill = { $skill ->
    [jump] salto a pies juntos
    [hop] salto a la pata coja
    [leap] zancada con vuelo
    [gallop] galope
    [slide] paso lateral
    [skip] paso saltado
    [run] carrera
    [walk] marcha
    [court] pata coja y pies juntos
   *[other] { $skill }
 }
paper-colour = { $colour ->
    [chalk] Chalk, blanco roto
    [straw] Straw, amarillo
    [harebell] Harebell, azul claro
    [sedge] Sedge, verde
    [hip] Hip, salmón
    [madder] Madder, rojo oscuro
   *[sloe] Sloe, azul oscuro
 }

# Antes de pintar
trial-title = Primero con tiza: { $name }
trial-foot = Prueba de { $name }
trial-why = Antes de pintar, dibuje con tiza o cinta estos tamaños en suelo seco, lejos de zonas, puertas y caminos. Que cuatro niños prueben cada uno, unas pocas veces, y apunte cuántas salieron bien: la ruta entera, en equilibrio, sin parar. Si un niño no quiere, ponga una raya.
trial-figures = Las figuras que hay que dibujar
trial-sizes = { $family } para { $group }: { $lengths }
trial-tries = Intentos
trial-column-child = niño
trial-column-figure = figura
trial-column-tries = intentos
trial-column-good = salieron
trial-back = Escriba los intentos en trials.csv, una fila por niño y figura: child, marking, n, good. Después haga el plan otra vez: dirá qué cambió.
trial-baseline = Punto de partida en diez minutos
trial-baseline-how = De ocho a diez niños. El mejor de tres saltos desde una línea, de las puntas al talón más cercano. Después cinco saltos a la pata coja con cada pie, de las puntas al salir al talón al llegar; 0 si aún no sale.
trial-column-jump = mejor salto
trial-column-right = cinco, pie derecho
trial-column-left = cinco, pie izquierdo
trial-baseline-back = Escríbalos en children.csv: jump_best, hops_right, hops_left. Solo códigos, nunca nombres.
trial-care-warm = Caliente antes; calzado que sujete; nadie más en la figura.
trial-care-grip = La tiza mojada y los bordes de cinta resbalan: solo suelo seco, y quite la cinta después.
trial-care-stop = Pare cuando un niño se canse o no quiera.
