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
