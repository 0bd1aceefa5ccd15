# Lo que la línea de órdenes dice alrededor de las notas.
severity-error = error
severity-warning = aviso
severity-advice = consejo
label-expected = se esperaba
label-mend = remedio
check-wrong = { $errors ->
    [one] Hay una cosa mal.
   *[other] Hay { $errors } cosas mal.
 } { $others ->
    [0] { "" }
    [one] Otra merece una mirada.
   *[other] Otras { $others } merecen una mirada.
 }
check-sound = { $others ->
    [0] Todo está en orden.
    [one] Nada está mal; una cosa merece una mirada.
   *[other] Nada está mal; { $others } cosas merecen una mirada.
 }
check-setout = { $off ->
    [0] Las { $readings } lecturas de comprobación del replanteo concuerdan.
    [one] Una de { $readings } lecturas de comprobación del replanteo no concuerda.
   *[other] { $off } de { $readings } lecturas de comprobación del replanteo no concuerdan.
 }
checks-csv-head = Copie este archivo a la carpeta del proyecto, anote lo que marcan las cintas de comprobación y ejecute `chalkyard check`.
checks-no-layout = hay lecturas de comprobación, pero ninguna disposición con la que compararlas
build-panel-left = { $panels } no caben en ninguna plancha: córtelas de una mayor o pida paneles menores
teach-no-game = ningún juego de la casa conviene a lo pintado aquí y a este grupo
teach-write-game = escriba uno propio (docs/games.md) o mida una figura para más niños
teach-session = { $name }: juego, semana { $week }, sesión { $session }
teach-session-told = { $groups ->
    [one] Primero un grupo en una estación; vea weeks.pdf.
   *[other] Primero { $groups } grupos en las estaciones; vea weeks.pdf.
 } Mire el tiempo y el suelo antes de salir.
survey-told-yard = El patio mide { $area }, con un margen de { $doubt }.
survey-told-free = Libre para pintar: { $area }.
told-written = escrito: { $file }
told-written-cut = escrito: out/cut, { $count } archivos para cortar
new-told-next = Ahora: rellene tape.csv y survey.toml, y después ejecute `chalkyard check { $dir }`.
progress-bounding = probando lo bueno que podría ser un plan
progress-laying = { $count ->
    [one] colocando una marca
   *[other] colocando { $count } marcas
 }
progress-exchanging = probando otras marcas, paso { $step } de { $of }: { $share } % de la práctica deseada
progress-polishing = enderezándolas, vuelta { $step } de { $of }
class-no-date = falta el día en que se cuentan las edades
class-add-date = añada una fecha a project.toml, como: date = 2026-09-01
class-empty = no hay niños para los que planear
class-add-children = añada filas a children.csv, o cantidades a programme.toml: ages = { "{" } 3 = 8, 4 = 10 { "}" }
class-turns = Como mucho { $out } niños están fuera a la vez, por el personal o el suelo: el grupo sale en { $outings } turnos.
plan-no-ground = no queda suelo libre para pintar
plan-see-blocked = `chalkyard survey` dibuja lo que ocupa cada parte del patio
plan-stopped = la búsqueda se detuvo; el último plan queda como está
plan-move-or-unlock = Muévala en layout.toml o quítele el bloqueo; `chalkyard audit` la juzga de nuevo.
plan-nothing = no se pudo colocar ninguna marca
plan-least-cost = la marca más barata que ayuda a esta clase cuesta { $cost }: suba el presupuesto al menos hasta ahí
plan-see-left-out = cada marca quedó fuera por suelo, dinero o provecho: pruebe con más suelo o menos rechazos
plan-no-candidate = ninguna familia de marcas sirve a esta clase con estos pesos
plan-told-markings = { $count ->
    [one] Una marca, { $cost } { $currency } en pintura y cinta.
   *[other] { $count } marcas, { $cost } { $currency } en pintura y cinta.
 }
plan-told-value = La clase recibe el { $value } % de la práctica deseada; ningún plan podría dar más del { $bound } % (diferencia { $gap } %).
plan-told-binds = { $of ->
    [money] Con { $more } más
    [ground] Con { $more } más de suelo
    [time] Con { $more } minutos más por sesión (la práctica deseada crece con ellos)
   *[staff] Con un adulto más
 }{ $sign ->
    [more] , un { $change } % más.
    [less] , un { $change } % menos.
   *[same] , nada cambiaría.
 }
plan-told-left-out = fuera: { $name }, { $why ->
    [refused] que el programa rechaza
    [no-gain] que no añadiría nada
    [same-family] cuya familia ya sirve a ese grupo
    [money] por falta de dinero
    [ground] por falta de suelo
    [no-place] que no cabe entre las demás
   *[outdone] sin la cual las demás rinden más
 }
plan-told-letters = { $name }: { $jumpable } de { $words } palabras se pueden saltar; el salto más largo es de { $longest }.
plan-told-letters-not = no se pueden saltar ahí: { $words }
plan-told-gone = ya no están desde el último plan: { $names }
plan-told-come = nuevas desde el último plan: { $names }
plan-told-resized = con otro tamaño desde el último plan: { $names }
plan-told-change = cambio en la práctica desde el último plan: { $change } %
audit-no-layout = no hay ninguna disposición que juzgar
audit-plan-first = haga una con `chalkyard plan`, o escriba layout.toml
audit-whole = toda la disposición
audit-check = { $hard ->
    [hard] ROTA
   *[wanted] no se cumple
 }: { $marking }: { $rule }: se quiere { $wanted }, hay { $actual }{ $unit ->
    [deg] { "" } grados
    [points] { "" } puntos
   *[other] { "" }
 }
audit-told = { $checks } comprobaciones: { $broken ->
    [0] se cumplen todas las reglas firmes
    [one] se rompe una regla firme
   *[other] se rompen { $broken } reglas firmes
 }, { $unmet ->
    [0] se cumplen todos los deseos
    [one] un deseo no se cumple
   *[other] { $unmet } deseos no se cumplen
 }.
