# Juegos sobre las marcas
games-none = `{ $key }` está vacío
games-span = `{ $key }` pide el mínimo y luego el máximo
games-want-span = dos números enteros, como [3, 5]
games-family = no hay ninguna familia `{ $family }`
games-activity = nadie hace `{ $activity }` en `{ $family }`
games-no-text = el juego no dice nada
games-no-text-mend = agregue una tabla [en] o [es] con sus textos
games-steps = un juego va en tres pasos, y aquí { $found ->
    [one] hay uno
   *[other] hay { $found }
 }
games-lines = `{ $key }` ocupa { $found ->
    [one] una línea
   *[other] { $found } líneas
 } de una tarjeta
games-lines-most = como mucho { $most } líneas de { $letters } letras
games-letters = `{ $key }` tiene { $found } letras
games-letters-most = como mucho { $most } letras
games-grade = estos textos se leen como de grado { $grade }
games-grade-most = grado { $most } o más fácil
games-grade-mend = frases más cortas y palabras más cortas
games-after-unknown = no hay ningún juego `{ $game }` que vaya antes
games-ring = cada uno de estos espera al siguiente: { $names }
games-ring-mend = quite un nombre de una de sus listas `after`
games-equipment = { $thing ->
    [bell] una campanilla
    [beanbag] bolsitas
    [cards] tarjetas
    [chalk] tiza
    [die] un dado grande
    [drum] un tambor
    [leaves] hojas
    [scarf] un pañuelo
    [toy] un peluche
   *[other] { $thing }
 }
games-link = { $link ->
    [letters] letras
    [numbers] números
    [colours] colores
    [shapes] formas
    [rhythm] ritmo
    [song] una canción
    [story] un cuento
   *[other] { $link }
 }
games-form = { $form ->
    [easier] Más fácil
    [harder] Más difícil
    [wheels] Con ruedas o con andador
    [low-vision] Para quien ve poco
   *[as-is] Tal como es
 }
