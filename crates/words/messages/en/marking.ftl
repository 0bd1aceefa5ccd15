# The markings' room: lengths of the families, and why some make no figure.
marking-count = A { $family } does not have { $given ->
    [one] one length
   *[other] { $given } lengths
}.
marking-count-expected = It has { $wanted }.
marking-range = The { $length } of { $family } cannot be { $given }.
marking-range-expected = It lies from { $least } to { $most }.
marking-clash = The { $length } of { $family } is too small beside its other lengths.
marking-clash-expected = With these, { $length } has to be at least { $least }.
length-cell = side of a square for one foot
length-single = middle to middle into a square for one foot
length-double = middle to middle into and out of a pair of squares
length-spot = breadth of a ring and depth of a broad cell
length-hop = middle to middle into a ring
length-jump = middle to middle into a broad cell
length-apart = middle to middle of two trails side by side
length-within = middle to middle of a lead ring and the pair that follows it
length-between = middle to middle of two sets of rings
length-ring = breadth of a ring
length-ahead = middle of the star to the middle of the spot ahead; the others follow, as far as each direction is easy
length-star-spot = depth of a spot along the facing
length-step = middle to middle of two cells side by side or one behind the other
length-numbered = depth of a numbered cell along the way
length-square = side of a square with its band
length-field = breadth of a round field; squares and triangles are drawn to look as large
length-out = middle of the compass to the middle of a cell
length-narrow = clear width of the water at its narrow end
length-wide = clear width of the water at its wide end
length-length = length along the way
length-width = clear width between the edges
length-radius = radius of the bends
length-radius-inner = radius of the innermost bend
length-radius-outer = radius of the outermost ring
length-narrow-line = breadth of the thinnest line
length-wide-line = breadth of the broadest line
length-beat = along a track from beat to beat
length-stride-gallop = from one print of the leading foot to the next
length-stride-skip = from one step-and-hop to the next
length-stride-hop = middle to middle of two prints of one foot
length-stride-leap = from one foot's print to the other's
