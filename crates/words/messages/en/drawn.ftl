# The room of a user's own figures: what a drawing says and cannot say.
drawn-not-xml = The drawing breaks off here, or is no SVG.
drawn-not-xml-mend = Save it again as plain SVG from the drawing program.
drawn-not-svg = The file holds { $found }, not an SVG drawing.
drawn-not-svg-mend = Save the drawing as plain SVG.
drawn-too-much = The drawing is too large: at most { $most } elements are read.
drawn-too-much-mend = Leave out what is not painted, and join paths that belong together.
drawn-nothing = Nothing in the drawing is landed on or travelled along.
drawn-nothing-mend = Give a shape a name that begins with cell- or lane-, as in cell-1-start.
drawn-scale = The scale { $text } cannot be read.
drawn-scale-expected = Write it as 1:10.
drawn-saying = { $name } cannot be { $value }.
drawn-saying-facing = It is an angle in degrees, anticlockwise from the right.
drawn-saying-order = It is numbers or free.
drawn-saying-mirror = It is yes or no.
drawn-saying-tracks = It is a number from 1 to 12.
drawn-gait = There is no gait called { $word }.
drawn-gait-expected = The gaits are { $gaits }.
drawn-pixels = The drawing is measured in pixels: on the ground it is { $width } by { $height }.
drawn-pixels-mend = Set the document's width to { $units } mm if one unit is meant to be a millimetre.
drawn-size = The figure is { $width } by { $height } on the ground.
drawn-size-mend = Draw in millimetres, one to one: a spot for one foot is 330 to 400 mm across. A small drawing can say its scale: data-scale="1:10".
drawn-value-odd = { $name } cannot be { $value }; it is passed over.
drawn-value-odd-mend = Save the drawing again, or correct the value.
drawn-path-broken = The path cannot be read to its end; what follows is left out.
drawn-path-broken-mend = Draw the path again, or delete what follows the slip.
drawn-link-lost = What this copy shows is not in the drawing.
drawn-link-lost-mend = Turn the copy into a shape of its own.
drawn-text = { $count ->
    [one] One text is left out
   *[other] { $count } texts are left out
}: letters depend on the fonts of a computer.
drawn-text-mend = Turn the letters into outlines ("object to path" or "create outlines") and save again.
drawn-image = { $count ->
    [one] One picture is left out
   *[other] { $count } pictures are left out
}: a picture cannot be cut as a stencil.
drawn-image-mend = Trace what is to be painted as shapes.
drawn-gradient = { $count ->
    [one] One gradient or pattern is
   *[other] { $count } gradients or patterns are
} taken as { $count ->
    [one] its
   *[other] their
} first colour.
drawn-gradient-mend = Give each shape one plain colour.
drawn-effect = { $count ->
    [one] One filter, mask or arrowhead is
   *[other] { $count } filters, masks or arrowheads are
} passed over.
drawn-effect-mend = Draw the edge itself, as a shape.
drawn-hidden = { $count ->
    [one] One named shape is hidden and
   *[other] { $count } named shapes are hidden and
} left out.
drawn-hidden-mend = Show the layer before saving, or delete it.
drawn-far = { $count ->
    [one] One shape lies
   *[other] { $count } shapes lie
} too far away to be meant.
drawn-far-mend = Delete stray shapes, or move them onto the page.
drawn-word = The word { $word } in this name means nothing.
drawn-word-expected = After the name may stand { $words }.
drawn-word-near = Perhaps { $near } is meant.
drawn-word-mend = Leave it out, or write it in one piece with the name.
drawn-nameless = This shape has a kind and no name.
drawn-nameless-mend = Number it, as in cell-1.
drawn-twice = Two cells are called { $cell }.
drawn-twice-mend = Give each its own number; two of one step are 3a and 3b.
drawn-next-unknown = After cell { $cell } shall come { $next }, and no cell is called so.
drawn-next-expected = The cells are { $names }.
drawn-cell-flat = Cell { $cell } encloses no ground.
drawn-cell-flat-mend = Draw the place where a foot lands as a closed shape.
drawn-cell-pieces = Cell { $cell } is in several pieces; the largest is taken.
drawn-cell-pieces-mend = Draw one closed shape for each cell.
drawn-lane-width = Lane { $lane } has no width.
drawn-lane-width-mend = Draw the middle of the way as a line, and make its stroke as wide as the way.
drawn-lane-flat = Lane { $lane } has no length.
drawn-lane-flat-mend = Draw the middle of the way as a line from where one begins to where one stops.
drawn-lane-broken = Lane { $lane } is in several parts; the first is taken.
drawn-lane-broken-mend = Join the parts, or name each as a lane of its own.
drawn-no-start = No cell is a start: cell { $cell } is taken.
drawn-no-start-mend = Call it cell-{ $cell }-start, or another one.
drawn-no-wait = Nobody knows where to wait.
drawn-no-wait-mend = Draw two or three spots off the way and call them wait-1, wait-2, wait-3.
drawn-unreached = No way leads to { $cells }.
drawn-unreached-mend = Number the cells in the order of the way, or name the followers: data-next="4 5".
drawn-dead-end = From { $cells } no way leads to an end.
drawn-dead-end-mend = Give the last cell the word end.
drawn-spot-small = Cell { $cell } is { $across } across: too small for a foot.
drawn-spot-expected = A spot is at least { $least } across.
drawn-spot-mend = Draw it larger; spots of this house are 33 to 40 cm.
drawn-spot-both = Cell { $cell } takes both feet and is { $across } at its longest.
drawn-spot-both-expected = Two feet want at least { $least }.
drawn-gap = From { $from } to { $to } it is { $far }: nobody clears that.
drawn-gap-expected = At most { $most } from middle to middle.
drawn-gap-mend = Move the cells together, or put one between.
drawn-overlap = Cells { $from } and { $to } lie on one another: there is nothing to clear.
drawn-overlap-mend = Leave bare ground between cells that follow one another.
drawn-bend = Lane { $lane } bends with a radius of { $radius }.
drawn-bend-expected = A bend that is run has at least { $least }.
drawn-corner = Lane { $lane } has a corner.
drawn-corner-mend = Round it with a radius of { $least } or more.
drawn-corridor = Lane { $lane } is { $width } wide.
drawn-corridor-expected = Wheels and walkers want { $least }.
drawn-colour-far = { $colour } is none of the paints; { $paint } is the nearest, and { $off } off.
drawn-colour-expected = The paints are { $paints }.
drawn-colour-mend = Choose one of these, or say what is meant: class="{ $paint }".
drawn-colour-unseen = { $paint } does not stand out on this ground.
drawn-colour-unseen-mend = Here { $paints } do.
drawn-bare = { $colour } is the grey of the ground: it is left bare, and so is what lies under it.
drawn-bare-mend = Give it a paint's colour if it is to be painted.
drawn-slivers = { $count ->
    [one] One piece of paint is
   *[other] { $count } pieces of paint are
} thinner than a millimetre and left out.
drawn-slivers-mend = Shapes that touch should share their edge.
drawn-narrow = { $count ->
    [one] One shape is
   *[other] { $count } shapes are
} in part too narrow for a stencil.
drawn-narrow-expected = Paint is at least { $least } wide everywhere.
drawn-narrow-mend = Widen the stroke, or leave the line out.
drawn-web = Between paints there { $count ->
    [one] is one strip
   *[other] are { $count } strips
} of bare ground narrower than { $least }: no stencil holds there.
drawn-web-mend = Move the shapes apart, or let them touch.
drawn-unpainted = Nothing is painted at { $cells }.
drawn-unpainted-mend = The named shape shows where a foot lands and is not painted itself; add the class paint if it is to be.
length-flight = middle to middle of two cells that follow one another
length-lane = length along the way
