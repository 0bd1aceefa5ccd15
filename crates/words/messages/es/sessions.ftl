# Lo que se dice del programa de semanas: quién juega dónde, qué falta, qué cambió un percance.
sessions-skill = { $skill ->
    [jump] Saltar con los dos pies
    [hop] Saltar a la pata coja
    [leap] Zancada
    [gallop] Galope
    [slide] Paso lateral
    [skip] Saltar alternando
   *[other] { $skill }
 }
sessions-needed = { $needs ->
    [jump] saltar con los dos pies
    [hop] saltar a la pata coja
    [leap] zancada
    [gallop] galope
    [slide] paso lateral
    [skip] saltar alternando
   *[other] { $needs }
 }
sessions-no-time = La sesión no deja tiempo para estaciones: el calentamiento y la vuelta a la calma ocupan { $minutes } minutos.
sessions-longer = Prevea sesiones más largas, o más sesiones.
sessions-nobody-out = Nadie puede salir: no hay personal, o el patio es pequeño incluso para una criatura.
sessions-more-staff = Revise el personal y la superficie del patio.
sessions-outings = La clase sale en { $count } turnos: a la vez serían más de los que permiten el personal o el patio.
sessions-miss-no-time = { sessions-skill }: no hay nada previsto para { $children }. No pueden salir, o no queda tiempo para estaciones. Mínimo: { $percent } % { $count ->
    [one] del
   *[other] de un
} objetivo.
sessions-miss-no-station = { sessions-skill }: ninguna estación conviene a { $children } ({ $percent } % { $count ->
    [one] del
   *[other] de un
} objetivo).
sessions-add-figure = Pinte o dimensione una figura que sirva, o deje que jueguen su forma más fácil.
sessions-miss-never-opens = { sessions-skill } no se abre en estas semanas para { $children }: antes viene lo que necesita ({ $percent } % { $count ->
    [one] del
   *[other] de un
} objetivo).
sessions-more-weeks = Prevea más semanas, o empiece antes con lo que la habilidad necesita.
sessions-miss-opens-late = { sessions-skill } se abre demasiado tarde para el objetivo entero de { $children }: { $count ->
    [one] recibe
   *[other] quien menos recibe llega a
} { $percent } %.
sessions-miss-stations = { sessions-skill }: ni con todo su tiempo allí { $children } alcanzarían el objetivo antes de que las estaciones cansen ({ $percent } % para { $count ->
    [one] esta criatura
   *[other] quien menos recibe
}).
sessions-miss-lost = { sessions-skill }: con las sesiones o estaciones perdidas { $children } habrían alcanzado el objetivo; ahora queda en { $percent } % para { $count ->
    [one] esta criatura
   *[other] quien menos recibe
}.
sessions-make-up = Haga una sesión más donde una semana lo permita.
sessions-miss-full = { sessions-skill }: las estaciones que sirven, o los ojos del personal, no dan más; { $children } { $count ->
    [one] recibe
   *[other] reciben al menos
} { $percent } % del objetivo.
sessions-second-track = Una segunda pista, otra figura u otra persona adulta darían sitio.
sessions-miss-time = { sessions-skill }: las demás habilidades necesitan más los minutos; { $children } { $count ->
    [one] recibe
   *[other] reciben al menos
} { $percent } % del objetivo.
sessions-too-soon = { sessions-skill } llega antes de haber practicado { sessions-needed }: { $children }.
sessions-play-before = Juegue algo de lo que necesita en el calentamiento de las semanas anteriores.
sessions-gap = El plan puede quedar hasta un { $percent } % por debajo de lo mejor posible.
sessions-pairs = { $count ->
    [one] Una vez pasa una criatura
   *[other] { $count } veces pasa una criatura
} entre las mismas dos estaciones en dos sesiones seguidas.
sessions-changed = { $lost ->
    [0] No se pierde ninguna salida
    [one] Se pierde una salida
   *[other] Se pierden { $lost } salidas
} y { $moved ->
    [0] no cambia ninguna
    [one] cambia una
   *[other] cambian { $moved }
} de las { $ahead } que quedan. Los objetivos se cumplen en { $value } de 100, antes en { $before }.
sessions-fell-behind = { $children } reciben ahora menos de la mitad de un objetivo que antes se cumplía a medias.
