# Días para pintar y horas para jugar. Lo que leen las maestras va en palabras sencillas.
days-rule-air = el aire ni muy frío ni muy caliente
days-rule-surface = el suelo ni muy frío ni muy caliente
days-rule-dew = el suelo bastante más caliente que el punto de rocío
days-rule-humidity = el aire bastante seco
days-rule-rain = sin lluvia
days-rule-dry-before = sin lluvia desde un día antes
days-rule-dry-after = sin lluvia unas horas después
days-rule-wind = poco viento
days-rule-dry-wanted = sin lluvia medio día después
days-rule-warm-after = bastante calor hasta un día después
days-no-window = Ningún día de trabajo de este pronóstico tiene lugar para { $hours ->
    [one] una hora
   *[other] { $hours } horas
} de pintura con { $coats ->
    [one] una mano
   *[other] { $coats } manos
}.
days-no-window-why = Lo que más estorba es esta regla, que falla en { $count ->
    [one] una hora de trabajo
   *[other] { $count } horas de trabajo
}: { $rule ->
    [days-rule-air] el aire no está ni muy frío ni muy caliente
    [days-rule-surface] el suelo no está ni muy frío ni muy caliente
    [days-rule-dew] el suelo está bastante más caliente que el punto de rocío
    [days-rule-humidity] el aire está bastante seco
    [days-rule-rain] no llueve
    [days-rule-dry-before] no ha llovido desde un día antes
    [days-rule-dry-after] no va a llover pronto
   *[other] hay poco viento
}.
days-no-window-mend = Pinte menos de una vez, o espere el próximo pronóstico.
days-ground-by-air = Estos ratos toman el suelo tan caliente como el aire. De noche y a la sombra puede estar más frío.
days-ground-by-air-mend = Mida el suelo con un termómetro infrarrojo antes de abrir una lata.
days-caution-label = La etiqueta de la pintura manda. Si dice más que esta página, haga lo que dice.
days-caution-ground = Mida el suelo ese mismo día. Debe estar al menos { $margin } °C más caliente que el punto de rocío, y nunca a más de { $hot } °C.
days-caution-damp = Después de la lluvia, pegue al suelo un plástico transparente por dos horas. Si se ve humedad, espere.
days-caution-skin = El suelo al sol quema. La piel duele desde unos { $pain } °C y puede ampollarse a { $burn } °C. Antes ponga el dorso de la mano { $seconds } segundos.
days-caution-closed = Que los niños no pisen por lo menos en { $hours } horas, y no antes de que un adulto pruebe cada marca, seca y mojada.
days-caution-typical = Un año típico dice qué meses son buenos. No es un pronóstico.
days-light-green = verde
days-light-yellow = amarillo
days-light-orange = naranja
days-light-red = rojo
days-do-green = Salgan a jugar.
days-do-yellow = Salgan con cuidado. Los turnos rápidos duran { $minutes } minutos como mucho.
days-do-orange = Quédense adentro.
days-do-orange-out = Quédense adentro, o salgan no más de { $minutes } minutos con calma a la sombra, si su regla local lo permite.
days-do-red = Quédense adentro.
days-do-unknown = Todavía no se sabe todo. Busque los números que faltan antes de salir.
days-do-heat = Hace calor. Primero la sombra. Usen gorra. Tomen agua cada { $soonest } a { $latest } minutos.
days-do-chill = Hace frío. Usen gorro, guantes y abrigo seco. Entren si alguien está mojado o tiembla.
days-do-air = El aire no está limpio. Tengan a mano los planes y medicinas de asma. Miren si alguien tose.
days-do-uv = El sol es fuerte. Primero la sombra. Usen gorra y protector solar.
days-do-thunder = ¿Truenos o rayos? Entren enseguida. Quédense adentro hasta { $minutes } minutos después del último.
days-do-hand = Ponga el dorso de la mano sobre la pintura { $seconds } segundos. Si duele, nadie juega ahí. Nadie va descalzo.
days-do-local = Las reglas de su ciudad, de su licencia y de su centro mandan.
