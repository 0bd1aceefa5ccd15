# Reglas de una disposición
rule-paint-on-ground = Toda la pintura queda sobre suelo que se puede pintar
rule-envelope-on-ground = El suelo que una marca necesita en uso está libre
rule-envelopes-apart = Las marcas en uso no se estorban entre sí
rule-run-out-inside = Los niños pueden frenar al final dentro del suelo de la marca
rule-lane-width = El carril es bastante ancho para un niño solo
rule-run-out-wanted = Después del final de una carrera no hay nada en el camino
rule-waiting-off-lanes = Quien espera está fuera de los carriles
rule-in-sight = El personal ve cada casilla desde donde está
rule-square-to-walls = La marca está a escuadra con la pared más cercana
rule-quiet-from-fast = Las marcas tranquilas quedan lejos de los carriles rápidos
rule-lane-from-edges = El carril queda lejos de paredes y objetos fijos
rule-landing-from-edges = Las caídas quedan lejos de paredes y objetos fijos
rule-landing-from-drains = Las caídas quedan lejos de desagües y tapas
rule-waiting-off-ways-out = Quien espera está fuera de puertas y portones
rule-lanes-crossed = Ningún carril ni paso cruza un carril
rule-contrast = La pintura se distingue del suelo
rule-wheeled-way = Las ruedas llegan al menos a una marca
rule-balance = Las marcas están repartidas por el patio

# Por qué una marca candidata no está en la disposición
left-out-refused = El programa la rechaza.
left-out-no-gain = No aportaría nada a este grupo.
left-out-same-family = { $name } ya sirve al mismo grupo.
left-out-money = El presupuesto no alcanza.
left-out-ground = No hay bastante suelo libre.
left-out-no-place = No tiene sitio entre las demás.
left-out-outdone = Cabe, pero el mejor conjunto hallado no la usa.

# Lo que está fijado
layout-locked-over-budget = Las marcas fijadas cuestan { $cost }, más que el presupuesto de { $budget }. Se quedan y no se añade nada
layout-locked-over-ground = Las marcas fijadas necesitan { $area } de suelo, más que los { $free } libres. Se quedan y no se añade nada
layout-unlock = Libere una de ellas en layout.toml
