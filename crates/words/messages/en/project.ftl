# Files
file-missing = there is no { $file } in this folder
file-no-file = { $file } is not a file
file-unreadable = { $file } cannot be read: { $why }
file-too-long = { $file } is longer than 8 MiB: no such file is written by hand
file-not-utf8 = { $file } is not UTF-8 text: line { $line } holds other bytes
file-save-as-utf8 = save the file again as UTF-8 text
file-survey = write survey.toml: at least `boundary`, the corners of the yard in the order walked
folder-new = make a project folder with `chalkyard new`
ledger-broken = the figures that came with the program cannot be read: { $why }

# Text tables
toml-syntax = the file cannot be read here: { $says }
toml-look-here = look for a missing quote, bracket or equals sign here or just before
toml-more = { $count ->
    [one] one more place cannot be read; most follow from the first
   *[other] { $count } more places cannot be read; most follow from the first
 }
key-missing = `{ $key }` is missing in { $table }
key-add = add `{ $key }`
key-unknown = `{ $key }` is not a key of { $table }
did-you-mean = did you mean `{ $near }`?
one-of = one of { $names }
value-type = `{ $key }` holds { $found ->
    [found-text] a text
    [found-number] a number
    [found-truth] true or false
    [found-date] a date
    [found-list] a list
   *[found-table] a table
 }
want-text = a text in quotes
want-number = a plain number
want-truth = true or false
want-date = a date without a clock time, as 2026-09-01
want-names = a list of names, as ["A", "B"]
want-table = a table
want-tables = a table under [[double brackets]]
want-pair = two lengths, as [7.2, 4.1]
want-length = a length, as 5.31, "5.31 m", "531 cm" or "17 ft 5 1/4 in"
want-positive-length = a length above zero
want-between = a number from { $low } to { $high }
want-name = a letter, then letters, digits, _ or -
want-currency = three capital letters, as USD
word-unknown = `{ $word }` is not a word for `{ $key }`
number-outside = `{ $key }` is outside what is possible
number-not-whole = `{ $key }` must be a whole number
names-count = `{ $key }` has { $found } names where { $wanted } are wanted
name-empty = the project has no name
name-odd = `{ $name }` is not a name that a file can use
name-twice = the name `{ $name }` is used twice
currency-unknown = `{ $found }` is not a currency code

# Lengths
length-empty = there is no length here
length-no-number = `{ $found }` is not a number
length-unit = `{ $found }` is not a unit of length
length-ambiguous = `{ $found }` could be two different numbers: leave out the grouping
length-order = the units are in the wrong order, or one is missing
length-carry = `{ $found }` is more than the next larger unit holds
length-too-long = no yard is wider than 10 km
length-not-positive = `{ $key }` must be above zero

# Rows and cells
table-empty = { $file } is empty
table-header = a first row that names the columns: { $header }
column-missing = there is no column `{ $column }`
column-unknown = `{ $column }` is not a column of this table
column-twice = the column `{ $column }` stands twice
cell-empty = this row has nothing under `{ $column }`
cell-fill = fill in `{ $column }`, or take the row out
row-too-long = this row has { $cells } cells under { $columns } columns
row-decimal-comma = write a decimal comma inside quotes, as "5,31", or part the cells with semicolons
quote-open = a quote opens here and never closes
quote-close = close the quote, or take it away
quote-more = there is text after the closing quote
quote-double = write a quote inside a quoted cell twice: ""

# Figures
figure-unknown = the ledger has no figure `{ $key }`
figure-search = search the ledger with `chalkyard sources`
figure-count = `{ $key }` takes { $wanted ->
    [one] one number
   *[other] { $wanted } numbers
 }, and { $found } { $found ->
    [one] stands
   *[other] stand
 } here
figure-no-number = `{ $key }` is not a number

# Readings
tape-no-rows = there are no readings in { $file } yet
tape-print-sheet = print the tape sheet that `chalkyard survey` makes, and go out with it
tape-same-ends = this reading goes from { $point } to itself
tape-not-positive = a reading must be above zero
tape-leave-out = leave the row out if it was not taped
reading-same-points = { $point } stands twice in this reading
readings-disagree = { $from } to { $to } is { $here } here and { $before } before
readings-within = two readings of one pair within { $allowed } of each other
readings-again = measure { $from } to { $to } again and keep the readings that you trust
frame-one-point = `origin` and `towards` are the same point
point-unknown = no reading leads to a point `{ $point }`
point-measure = measure { $point }, or take the name out

# The yard
outline-short = an outline needs at least three points, and { $found } { $found ->
    [one] stands
   *[other] stand
 } here
outline-crosses = this outline crosses itself
outline-order = name its points in the order in which one walks round it
edge-off-boundary = { $point } is not on the boundary
edge-no-length = this edge begins and ends at the same place
hinge-elsewhere = the hinge `{ $hinge }` is neither end of the opening
route-end-unknown = no door, gate or fixture is called `{ $name }`
route-ends = the name of a door, a gate or a fixture

# A yard traced on an open map
traced-not-json = this file is not JSON: { $says }
traced-no-yard = { $file } holds no outline of a yard
traced-want-yard = GeoJSON in degrees with one polygon for the yard (property "role": "yard")
traced-want-degrees = longitude from -180 to 180, then latitude from -90 to 90
traced-odd = { $count ->
    [one] one shape has coordinates that are no degrees: it is left out
   *[other] { $count } shapes have coordinates that are no degrees: they are left out
 }
traced-pole = this outline lies too near to a pole
traced-holes = { $count ->
    [one] the outline has a hole: it is left out
   *[other] the outline has { $count } holes: they are left out
 }
traced-too-wide = the outline reaches { $reach } from its middle: that is no yard
traced-want-width = at most { $width }
traced-too-small = the outline bounds only { $area }
traced-crosses = the yard's outline crosses itself
traced-redraw = draw it again on the map, corner by corner in the order in which one walks round it
traced-sides = the map does not say what these sides are: { $sides }
traced-sides-mend = they count as walls; write an [[edge]] for each where they are not
traced-surface = the map does not say what the ground is made of: asphalt is assumed
traced-surface-mend = look, and correct the [[surface]] in survey.toml
traced-sigma = a point on a map may be off by more than { $sigma }: good enough to plan, not to paint
traced-tape = tape the sides and the diagonals, and put the readings into tape.csv
traced-footprints = only points on the map, so their footprints are assumed and their heights unknown: { $names }
traced-footprints-mend = measure each one and write its outline; till then the widest clear zone counts
traced-gates = only points on the map, so { $width } is assumed for their width: { $names }
traced-gates-mend = measure both posts of each gate
traced-outside = outside the yard, and left out: { $names }
traced-unknown = not of a yard, and left out: { $names }
traced-file-head = This survey was traced on an open map, not measured. Tape the yard before anything is painted: put the readings into tape.csv and take the [[known]] points out that you have taped.
traced-file-frame = Metres on a transverse Mercator plane (WGS 84) that touches the ground at latitude { $latitude }, longitude { $longitude }; x runs east, y north. The plane itself is right to 0.01 mm over a yard.
traced-file-known = A point on a map is taken as good to { $sigma } (standard deviation).
traced-file-edges = Sides that the map names; all others count as walls.
traced-file-surface = The map does not record the ground: asphalt is assumed. Look, and correct it.
traced-file-fixtures = Only points on the map: the radius of each is assumed, its height is unknown. Measure it.
traced-file-gates = Only points on the map: the width is assumed.

# Writing
write-failed = { $file } could not be written: { $cause }
write-nothing-changed = nothing was changed; make room or free the file, and try again
write-mixed = putting back failed too: some files are new and some old, each of them whole; run the same again
