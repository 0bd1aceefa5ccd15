# What the survey tells. Readings are called by their points; lengths come in the user's unit.
survey-point-unknown = A point is used here that the survey does not have.
survey-line-of-one-point = The line of the frame starts and ends at { $point }.
survey-name-two-points = Name two different points as origin and towards.
survey-start-not-a-number = A rough place under start is not a number.
survey-no-readings = There are no tape readings to work from.
survey-tape-some-lengths = Tape the sides of the yard and some diagonals.
survey-reading-to-itself = A reading from a point to itself: { $points }.
survey-name-other-point = Name the point it was really taped to.
survey-sigma-impossible = The standard deviation of { $points } cannot be right.
survey-sigma-positive = A standard deviation is greater than zero.
survey-reading-impossible = { $points } cannot read { $reads }.
survey-angle-between = An angle between 0 and 180 degrees, both left out.
survey-length-between = A length above zero and no longer than { $most }.
survey-tape-again = Tape it again.
survey-known-too-few = Known coordinates of one point cannot carry the frame, so they were left out.
survey-known-two = Two points at least, each with x and y.
survey-known-add-or-strike = Add a second known point, or strike this one.
survey-line-loose = The readings do not hold the line { $line } to the rest of the yard.
survey-line-used = The frame lies on { $line } instead.
survey-line-tape-or-choose = Tape from both ends of the line to two more points, or choose another line.
survey-not-joined = No reading joins these to the rest of the yard: { $points }.
survey-join-by-three = Tape at least three lengths from them to the rest, from different points.
survey-point-loose = { $point } is loose: the readings do not say where it is.
survey-tape-next = Best taped next: { $line }.
survey-tape-to-two-more = Tape it to two more points, or say which wall it lies on.
survey-points-weak = { $count ->
    [one] { $points } is weakly held: it may be off by { $axis } and more.
   *[other] { $points } are weakly held: they may be off by { $axis } and more.
 }
survey-points-weak-and = { $points } and { $others } more points are weakly held: they may be off by { $axis } and more.
survey-tape-across = Tape to such a point from one that looks at it from the side.
survey-side-assumed = { $points } could lie on either side of { $line }. We took the side inside the yard.
survey-two-places = { $points } could lie on either side of { $line }. The drawing shows a guess.
survey-tape-from-elsewhere = Tape one more length to it, from a point off that line.
survey-reading-doubtful = { $points } reads { $reads }; the others say { $should }. It was set aside.
survey-readings-doubtful = One of these readings is wrong, and the readings cannot say which: { $lines }.
survey-tape-one-more = Tape one more length between other points, or tape these again.
survey-longer-than-round = { $points } reads { $reads }, but the way round by { $via } is only { $round }.
survey-readings-disagree = The readings disagree { $times } times as much as they promise. Fewer than { $alpha } in 100 good surveys do.
survey-check-sigma-or-tape = Look at the tape's sigma, and tape the doubtful lengths again.
survey-unchecked = { $count ->
    [one] One reading is checked by hardly any other, so a slip there would not show: { $lines }{ $more ->
        [0] { "" }
       *[other] { " " }and { $more } more
    }.
   *[other] { $count } readings are checked by hardly any other, so a slip there would not show: { $lines }{ $more ->
        [0] { "" }
       *[other] { " " }and { $more } more
    }.
}
survey-boundary-short = { $count ->
    [0] No boundary is given, so there is no area.
    [one] The boundary has one corner, so there is no area.
   *[other] The boundary has { $count } corners, so there is no area.
}
survey-boundary-three = Name at least three corners, in the order you walk past them.
survey-boundary-crosses = The boundary crosses itself: { $first } and { $second } meet.
survey-boundary-order = Check the order of the corners, and the readings near these sides.
survey-walked-other-way = The readings say that the boundary runs the other way round than written.
survey-check-walked = Check walked, and the order of the corners.
survey-slip-metres = { $count ->
    [1] Probably one whole metre too many.
    [-1] Probably one whole metre too few.
   *[other] Probably whole metres miscounted: { $count }.
}
survey-slip-feet = { $count ->
    [1] Probably one whole foot too many.
    [-1] Probably one whole foot too few.
   *[other] Probably whole feet miscounted: { $count }.
}
survey-slip-tenths = { $count ->
    [1] Probably a tenth of a metre too many.
    [-1] Probably a tenth of a metre too few.
   *[other] Probably tenths of a metre miscounted: { $count }.
}
survey-slip-digits = Probably two digits were swapped; { $should } would fit.
survey-slip-foot-inch = Probably feet and inches were mixed up; { $should } would fit.
survey-slip-hook = Probably the hook or end ring of the tape ({ $length }) was counted in or left out.
