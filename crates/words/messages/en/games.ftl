# Games on the markings
games-none = `{ $key }` is empty
games-span = `{ $key }` wants the least, then the most
games-want-span = two whole numbers, as [3, 5]
games-family = there is no family `{ $family }`
games-activity = nobody does `{ $activity }` on `{ $family }`
games-no-text = the game says nothing
games-no-text-mend = add a table [en] or [es] with its texts
games-steps = a game goes in three steps, and here { $found ->
    [one] is one
   *[other] are { $found }
 }
games-lines = `{ $key }` takes { $found ->
    [one] one line
   *[other] { $found } lines
 } of a card
games-lines-most = at most { $most } lines of { $letters } letters
games-letters = `{ $key }` has { $found } letters
games-letters-most = at most { $most } letters
games-grade = these texts read like grade { $grade }
games-grade-most = grade { $most } or easier
games-grade-mend = shorter sentences and shorter words
games-after-unknown = there is no game `{ $game }` to come before
games-ring = each of these waits for the next: { $names }
games-ring-mend = take one name out of one of their `after` lists
games-equipment = { $thing ->
    [bell] a bell
    [beanbag] beanbags
    [cards] cards
    [chalk] chalk
    [die] a big die
    [drum] a drum
    [leaves] leaves
    [scarf] a scarf
    [toy] a soft toy
   *[other] { $thing }
 }
games-link = { $link ->
    [letters] letters
    [numbers] numbers
    [colours] colours
    [shapes] shapes
    [rhythm] rhythm
    [song] a song
    [story] a story
   *[other] { $link }
 }
games-form = { $form ->
    [easier] Easier
    [harder] Harder
    [wheels] On wheels or with a walker
    [low-vision] For a child who sees little
   *[as-is] As it is
 }
