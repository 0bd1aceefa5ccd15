# Los apoyos en el tiempo
motion-foot = { $foot ->
    [R] derecho
    [L] izquierdo
   *[B] los dos
 }
motion-moment = { $down ->
    [air] En el aire
    [R] Pie derecho apoyado
    [L] Pie izquierdo apoyado
    [push-R] Impulsa la mano derecha
    [push-L] Impulsa la mano izquierda
    [push-B] Impulsan las dos manos
    [glide] Rodando
    [wait] Sigue rodando, espera
    [still] En reposo
    [frame] El andador avanza
   *[B] Los dos pies apoyados
 }
motion-landing = { $foot ->
    [R] { $role ->
        [closing] el pie derecho se junta
        [hop] el pie derecho cae de su salto
        [tap] el pie derecho toca el suelo
        [stand] el pie derecho queda quieto
       *[contact] se apoya el pie derecho
     }
    [L] { $role ->
        [closing] el pie izquierdo se junta
        [hop] el pie izquierdo cae de su salto
        [tap] el pie izquierdo toca el suelo
        [stand] el pie izquierdo queda quieto
       *[contact] se apoya el pie izquierdo
     }
   *[B] caen los dos pies juntos
 }{ $flown ->
    [yes] , tras el vuelo
   *[no] { "" }
 }
motion-ride = { $role ->
    [push] { $hands ->
        [R] mano derecha
        [L] mano izquierda
       *[B] impulso
     }
    [short] { $hands ->
        [R] mano derecha, corto
        [L] mano izquierda, corto
       *[B] impulso corto
     }
    [glide] rodar
    [wait] esperar
    [frame] andador
   *[still] parar
 }
motion-rides = { $role ->
    [push] { $hands ->
        [R] impulsa la mano derecha
        [L] impulsa la mano izquierda
       *[B] impulsan las dos manos
     }
    [short] { $hands ->
        [R] impulsa la mano derecha, corto
        [L] impulsa la mano izquierda, corto
       *[B] impulsan las dos manos, corto
     }
    [glide] las manos sueltan, las ruedas siguen
    [wait] las ruedas siguen, las manos esperan
    [frame] el andador se apoya delante
   *[still] se queda en reposo sobre la marca
 }
motion-adapted = { $means ->
    [walker] { $skill ->
        [jump] Andador, paso, paso, dos veces; después, en reposo sobre la marca.
        [hop] Da siempre el primer paso el mismo pie.
        [leap] Rápido al otro lado: andador, paso, paso.
        [gallop] Un avance largo del andador, después uno corto.
        [slide] A lo largo de la línea: andador, paso, paso.
        [skip] Andador, paso, paso, esperar.
        [run] Rápido: andador, paso, paso.
       *[walk] A su ritmo: andador, paso, paso.
     }
   *[wheels] { $skill ->
        [jump] Dos impulsos, rodar hasta la marca, parar del todo.
        [hop] Impulsa una mano, otra vez el mismo lado; la otra guía.
        [leap] Un impulso rápido al otro lado.
        [gallop] Un impulso largo, un impulso corto.
        [slide] Impulsos a lo largo de la línea.
        [skip] Impulso, esperar, impulso.
        [run] Impulsos rápidos.
       *[walk] Impulsos a su ritmo.
     }
 }
motion-form = { $name ->
    [one-after-the-other] un pie tras otro
    [steps-over] pasa por encima
    [taps] el pie libre toca
    [changes-foot] cambia de pie
    [big-step] paso grande, sin vuelo
    [stops-first] se detiene antes
    [lead-changes] cambia la guía
    [passes] pasa el de atrás
    [even-beat] ritmo parejo
    [crosses] pies cruzados
    [turns] puntas giradas
    [drags] pies arrastrados
    [one-sided] de un solo lado
    [pauses] con pausas
    [shuffles] sin vuelo
    [wide] pies abiertos
    [two-on-one] dos pies en la casilla de uno
   *[other] { $name }
 }
motion-early-jump-one-after-the-other = Los pies caen uno tras otro.
motion-early-jump-steps-over = Un pie pasa por encima; el otro lo sigue.
motion-early-hop-taps = El pie libre toca el suelo.
motion-early-hop-changes-foot = Tras dos saltos sigue el otro pie.
motion-early-leap-big-step = Un paso grande: siempre hay un pie en el suelo.
motion-early-leap-stops-first = El niño se detiene antes del vuelo.
motion-early-gallop-lead-changes = Cambia el pie que va delante.
motion-early-gallop-passes = El pie de atrás pasa al de delante.
motion-early-gallop-even-beat = Un ritmo parejo, como al correr.
motion-early-slide-crosses = Los pies se cruzan.
motion-early-slide-turns = Las puntas giran hacia el camino.
motion-early-slide-drags = Los pies se arrastran: no hay rebote entre pasos.
motion-early-skip-one-sided = Un pie salta, el otro solo da el paso.
motion-early-skip-pauses = Una pausa antes de cada paso.
motion-early-run-shuffles = Sin vuelo: siempre hay un pie en el suelo.
motion-early-run-wide = Los pies caen lejos de la línea.
motion-early-court-taps = El pie libre toca el suelo en la casilla de un pie.
motion-early-court-one-after-the-other = Los pies caen en el par uno tras otro.
motion-early-court-two-on-one = Caen los dos pies en la casilla de un pie.
