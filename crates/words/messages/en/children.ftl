# The children's room: what a roster or an override can have wrong.
child-age-outside = { $child } would be { $years } years old on the project's date.
child-born-later = { $child } would be born after the project's date.
child-age-expected = The figures hold for children of { $least } to { $most } years. Check the birth month and the project's date.
child-measure-impossible = The { $column } of { $child } reads { $value }, and no child of this age measures that.
child-measure-far = The { $column } of { $child } reads { $value }, far from what the age expects.
child-measure-expected = About { $about } is usual at this age.
child-measure-again = Measure again; if it is right, leave it. Otherwise look at the unit and the decimal point.
child-measured-on-feet = { $child } travels by other means, so its jump and hop distances are not used.
child-own-means = { $count ->
    [one] One child travels by means of its own: { $children }. Its reach is a guess from common practice.
   *[other] { $count } children travel by means of their own: { $children }. Their reach is a guess from common practice.
}
child-own-means-mend = Measure how far one comfortable push or assisted step carries, and write it in overrides.toml.
child-right-less-used = { $child } hops clearly shorter on the right, so the right counts as its less used side.
child-left-less-used = { $child } hops clearly shorter on the left, so the left counts as its less used side.
child-unknown = No child is called { $child }.
child-unknown-expected = These are known: { $children }.
child-figure-outside = { $child } cannot have { $value } for { $figure }.
child-probability-expected = A probability lies from 0 to 1.
child-figure-expected = A length or a speed is above 0 and at most 10; a spread may be 0.
