# What is told of the set-out and of its check readings. Key points are called by their marking and a number.
setout-loose-left-out = No tape is hooked to { $points }: the survey does not hold { $count ->
    [one] it
   *[other] them
}.
setout-tape-them-again = Nothing is lost while other points serve. More readings to { $count ->
    [one] it
   *[other] them
} would help.
setout-unreached = { $marking }: { $count ->
    [one] one key point is
   *[other] { $count } key points are
} out of reach of two tapes that cross well.{ $found ->
    [0] { " " }The marking cannot be set out.
   *[other] { "" }
}
setout-two-bases = Two surveyed points with a clear way to it, seen under an angle between { $least } and { $most } degrees.
setout-survey-another = Survey one more point that has a clear view of the marking: a corner, a post, a nail in a joint.
setout-no-third = No third tape reaches { $points }.
setout-measure-between = Measure between the key points of the marking instead, before you paint.
setout-flat-crossing = The tapes cross at a flat angle at { $points }.
setout-take-care = Hold both tapes taut and level there, and trust the check tape.
setout-name-unknown = { $name } is neither a key point of the set-out nor a surveyed point that holds.
setout-name-as-printed = Write the name as the sheet has it.
setout-to-itself = A reading from { $name } to itself.
setout-name-other-end = Name the point it was really taped to.
setout-reading-impossible = { $points } cannot read { $reads }.
setout-measure-again = Measure it again.
setout-base-doubtful = { $base } has moved, or another point was taken for it{ $count ->
    [0] { "" }
   *[other] : { $points } { $count ->
        [one] hangs
       *[other] hang
    } on it
}.
setout-look-at-base = Find { $base } again and tape it to two surveyed points. If it has moved, set out from other points.
setout-redo = { $point } lies wrong: a check tape to it is off by { $off }.
setout-hold-again = Set it out again: { $first } from { $a }, { $second } from { $b }. Then read the checks again.
setout-reading-off = { $point } to { $other } reads { $reads }. It should read { $should }, give or take { $limit }.
setout-again-then-redo = Measure it again. If it reads the same, set out { $point } again.
setout-wrong-side = It would fit if the tapes were crossed on the other side of the line from { $a } to { $b }.
setout-swapped = It would fit if each length was held to the other base, { $a } for { $b }.
setout-held-wrong = It would fit if the tape from { $base } was held at { $at }, not at { $wanted }.
setout-unchecked = { $count ->
    [one] { $points } has
   *[other] { $points } have
} no check reading.
setout-measure-third = Measure the third tape before you paint.
