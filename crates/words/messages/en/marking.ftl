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
length-narrow = clear width of the water at its narrow end
length-wide = clear width of the water at its wide end
length-length = length along the way
length-width = clear width between the edges
length-radius = radius of the bends
