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
