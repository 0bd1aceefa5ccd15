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
toml-syntax = this line cannot be read
toml-look-here = a line is `key = value`, a [heading], or a comment after #
toml-more = { $count ->
    [one] one more line cannot be read
   *[other] { $count } more lines cannot be read
 }
toml-comma = a number in this file has a decimal point, not a comma
toml-comma-mend = write it with a point, or in quotes, as "5,20"
toml-twice = `{ $key }` stands twice here
toml-twice-mend = keep one of them
toml-no-value = nothing stands after the equals sign
toml-no-value-mend = write a value, or take the line out
toml-bare = `{ $found }` must stand in quotes
toml-bare-mend = a text, and a length with its unit, stand in straight quotes, as "5.20 m"
toml-no-equals = there is no equals sign after this key
toml-no-equals-mend = write `key = value`
toml-quote = a quote is missing here
toml-quote-mend = open and close the text with one straight quote each; where the text holds an inch mark, use single quotes or write `in`
toml-inch = a quote inside the text ends it too early
toml-backslash = a backslash has a meaning of its own between double quotes
toml-backslash-mend = use single quotes round the text
toml-heading = the heading of this table is not closed
toml-heading-mend = write [name] for one, [[name]] for each of several
toml-list = a comma or a closing bracket is missing in this list
toml-list-mend = write the list as ["A", "B", "C"]
toml-braces = a comma or a closing brace is missing here
toml-braces-mend = write the table as { "{" } A = [0, 0], B = [24, 0] { "}" }
toml-date = `{ $found }` is no date
toml-date-mend = write the year, the month and the day, as 2026-09-01
toml-truth = `{ $found }` is neither true nor false
toml-truth-mend = write true or false in small letters
toml-zero = a number does not begin with a zero
toml-zero-mend = take the zero away, or write the value in quotes
toml-line = more stands on this line than one key and its value
toml-line-mend = write one key on each line
key-missing = `{ $key }` is missing in { $table }
key-add = add `{ $key }`
key-unknown = `{ $key }` is not a key of { $table }
did-you-mean = did you mean `{ $near }`?
one-of = one of these: { $names }
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
names-count = `{ $key }` has { $found ->
    [one] one name
   *[other] { $found } names
 } where { $wanted } are wanted
name-empty = the project has no name
name-odd = `{ $name }` is not a name that a file can use
name-as = write `{ $name }`, here and wherever it is used
date-odd = `{ $found }` is no date
name-twice = the name `{ $name }` is used twice
currency-unknown = `{ $found }` is not a currency code

# Lengths
length-empty = there is no length here
length-no-number = `{ $found }` is not a number
length-unit = `{ $found }` is not a unit of length
length-ambiguous = `{ $found }` could be two different numbers: leave out the grouping
length-order = the units are in the wrong order, or one is missing
length-carry = `{ $found }` is too much beside the larger unit: carry it over
length-too-long = no yard is wider than 10 km
length-say-unit = a bare number is in the project's unit: where it is another, write the unit too, as "12000 mm"
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
row-quote = a cell that holds the mark which parts the cells stands in quotes, as "{ $cell }"
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
cell-leave-empty = leave the cell empty where nothing was measured
reading-same-points = { $point } stands twice in this reading
readings-disagree = { $from } to { $to } is { $here } here and { $before } before
readings-within = two readings of one pair within { $allowed } of each other
readings-again = measure { $from } to { $to } again and keep the readings that you trust
frame-two-points = name two points, far from each other
frame-one-point = `origin` and `towards` are the same point
point-unknown = no reading leads to a point `{ $point }`
point-loose = { $point } is used here, and the readings do not say where it is
point-loose-mend = tape { $point } from one more point, well to the side; till then nothing can be planned around it
point-measure = measure { $point }, or take the name out
names-alike = `{ $here }` and `{ $before }` are two points that differ by capitals only
names-alike-mend = where one point is meant, spell it the same everywhere
tape-long = { $count ->
    [one] this reading is { $reading }: no tape is that long
   *[other] { $count } readings are longer than any tape; this one is { $reading }
 }
tape-long-mend = look at the unit: `units` in project.toml says what a bare number is
row-decimal-split = this looks like the reading { $whole },{ $part } in two cells
boundary-empty = the boundary has no corners
boundary-short = { $found ->
    [one] the boundary has only one corner
   *[other] the boundary has only { $found } corners
 }
boundary-corners = name the corners of the yard in the order walked, as ["A", "B", "C", "D"]

# The yard
outside-yard = { $name } lies outside the yard
outside-yard-mend = check its readings; take it out if it is not in this yard
outline-short = an outline needs at least three points, and { $found } { $found ->
    [one] stands
   *[other] stand
 } here
outline-crosses = this outline crosses itself
outline-order = name its points in the order in which one walks round it
edge-off-boundary = { $point } is not on the boundary
edge-corners = name corners of the boundary, or points that were taped on it
edge-no-length = this edge begins and ends at the same place
hinge-elsewhere = the hinge `{ $hinge }` is neither end of the opening
route-end-nowhere = no door, gate or fixture is called `{ $name }`
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
write-exists = { $file } stands there already, and nothing is written over it
write-elsewhere = choose a folder that does not exist yet, or move the file away

# The class
child-name = this looks like a child's name; names stay out of these files, so that nobody outside the centre can know the child
child-want-code = a code, as `wren` or `c07`: a letter, then letters, digits, _ or -
child-list-apart = keep the list of names and codes on paper, locked away at the centre
child-column-personal = the column `{ $column }` would make a child known outside the centre
child-column-out = take the column out, and keep what it holds on paper at the centre
child-born-day = a birthday stands here; the month is enough, and a day can give a child away
child-born-write = write { $month }
child-born-odd = `{ $found }` is not a birth month
child-want-month = a year and a month, as 2023-03
child-hops-below = hops cannot be shorter than nothing
child-want-hops = the length of five hops, or 0 where the child cannot hop on that foot yet
child-nobody = no child has the code `{ $child }`
child-want-known = a code of children.csv
child-write-class = write children.csv first, or `ages` in programme.toml
override-no-child = `{ $key }` stands outside any child
override-want-child = a child's code in brackets first, as [wren]
override-outside = `{ $key }` is outside what is possible
override-want-length = a length from 0 to 10 m; only `tau` and `scatter` may be 0
override-want-speed = metres a second, above 0 and at most 10

# The programme
weights-none = every skill weighs 0: there is nothing to plan
weights-some = give at least one skill a weight above 0
word-odd = `{ $word }` is not a word for a letter court
word-want = { $least } to { $most } letters and nothing else
family-unknown = there is no family `{ $family }`
family-draw = draw it yourself as figures/{ $family }.svg, or choose another
family-both = `{ $family }` is wanted and refused
figure-name = `{ $name }` is not a name that a layout can use
figure-like-family = a figure of your own cannot be called `{ $name }`: that is a family of the house
figure-rename = give the file another name
age-odd = `{ $age }` is not an age in years
age-want = an age from 0 to 18, as 3, or "3.25" in quotes
age-bare = an age with a point must stand in quotes
age-quote = write ages = { "{" } "3.5" = 2 { "}" }
age-count = the number of children of { $age } years must be a whole number
ages-and-class = children.csv has the children one by one, so these counts are not used
ages-out = take `ages` out, or keep children.csv out of the folder
package-size = `{ $found }` is not a size in which this is sold
package-want-volume = a size as "0.75 L", "750 ml", "1 qt" or "1 gal"
package-want-length = a length as "50 m" or "150 ft"
package-want-mass = a weight as "500 g", "1 kg" or "5 lb"
package-price = the price of `{ $package }` is not a plain number

# The layout
layout-mirrored = a { $family } cannot be mirrored: what is written on it would read backwards
layout-mirrored-mend = take `mirrored` out, and turn the marking instead
layout-unread = layout.toml cannot be read, so it is not written over
layout-mend-first = mend it, or move it away, and plan again

# Trials
trial-count = `{ $column }` cannot be { $found }
trial-want-count = a whole number from { $low } to { $high }
trial-one = a row of tries names a marking or a figure, and never both
trial-want-one = under `marking` a name of layout.toml, or under `figure` a family
trial-marking = no marking of layout.toml is called `{ $marking }`
trial-as-figure = name one that is there, or write the family under `figure` and its lengths under `lengths`
trial-lengths-spare = lengths belong to a figure of the day, not to a marking
trial-lengths-out = take them out: the marking's own stand in layout.toml
trial-length-unknown = a { $family } has no length `{ $length }`
trial-lengths-missing = the lengths of that day's figure are not all there: { $names }
trial-lengths-add = measure what was chalked, and add { $example }
trial-lengths-odd = `{ $found }` is not a name and a length
trial-want-lengths = names and lengths, as narrow=20 cm; wide=75 cm
trial-activity-unsaid = this figure can be used in more than one way, and the row does not say in which
trial-activity = `{ $activity }` is not done on this figure

# Readings still to come
build-hours = the crew would end before it begins
build-hours-mend = write hours of the clock, as from = 9 and until = 15.5
build-tool = a { $tool } does not cut { $material }
weather-unreadable = { $file } cannot be read, or is larger than any year of hours
game-like-ours = a game of the house is called { $name }
seen-one = a row has either looks or contacts
seen-want-one = `looks` and `met`, or `contacts` and `broke`
seen-skill = { $found } is no skill
seen-yes-no = { $found } is neither yes nor no
tape-blank = { $count ->
    [one] one row has its points and no reading yet
   *[other] { $count } rows have their points and no reading yet
 }
tape-fill = tape them and fill them in; take out those that nobody can tape

# A new folder
new-corners = no yard has { $found ->
    [one] one corner
   *[other] { $found } corners
 }
new-project = What this project is called, and how it wants to be spoken to.
new-project-units = Bare numbers are in these units, m or ft. Any length may carry its own instead: "5.31 m", "531 cm", "17 ft 5 1/4 in". Languages: en, es. Paper: a4, letter.
new-project-zones = The standard that keeps ground clear round equipment: us-handbook or european-norm. Local codes and licensed inspectors go before either.
new-project-budget = What may be spent on paint and the like, in this currency; without it, money does not bind.
new-project-date = The day that ages are reckoned on.
new-project-figures = Any figure that the program uses can be replaced here; `chalkyard sources` lists them all.
new-tape = One reading a row, as called out in the yard. Tape every side twice, from both ends: a second row of the same pair is a second reading. Hold the tape tight and level, keep it off hot equipment, and put a cone where it crosses a gate. Lines that begin with # are not read. A row looks like this:
new-survey = The yard: its corners, what its sides are, and what stands in it. Look first, mark each corner with chalk, and let somebody keep the children and the traffic away while you tape.
new-survey-boundary = Corners in the order in which one walks round, anticlockwise as seen from above. The first is the origin, and the second lies along x.
new-survey-north = The bearing from the first corner to the second, degrees clockwise from north: a compass is good enough.
new-survey-edges = What each side is: wall, fence, hedge, kerb, drop or open.
new-survey-surface = What the ground is, and its state: sound, worn, cracked or spalled. More [[surface]] blocks lie on top of the first.
new-survey-offset = A point taped from a line: so far along it, so far to its left (to its right with a minus). Take the # away where you use a block, and give each block your own points.
new-survey-fixture = What stands in the yard: a round thing by its middle and its radius, any other by its outline. Kinds: slide, swing, tyre-swing, climber, seesaw, rocker, roundabout, house, tree, post, lamp, bench, table, shed, building, planter, sandpit, drain, cover, hydrant, other.
new-survey-swing = A swing by the ends of its beam and the height of its pivots.
new-survey-slide = A slide by its outline, its platform's height and the two points of its exit.
new-survey-door = A door into the yard by its two jambs and the one with the hinge; opens = "out" is over the yard.
new-survey-gate = A gate by its two posts.
new-survey-route = Ways that must stay open, from a door, a gate or a fixture to another.
new-survey-stand = Where staff usually stand.
new-survey-place = Where on earth, for sun and shade.
new-children = One child a row, by a code and the month of birth. Never a name, never a birthday: keep the list of codes on paper at the centre. Only id and born are needed; measure what you can. sex is f or m; less_used is left or right, the foot that is known to be used less; means is feet, walker, wheels or held. A row looks like this:
new-programme = What the centre means to do with its yard.
new-programme-ages = Where children.csv stays empty: how many children of each age.
new-programme-words = Words for letter courts.
new-programme-families = Figures that are wanted (then no others are considered) or refused.
new-programme-prices = What paint costs where you buy it, by the can.
new-programme-build = Who paints on how many days, between which hours of the clock. docs/format.md has more: what stencils are cut from, and with what.
new-programme-weights = How much each skill is wanted; 0 leaves one out.
traced-file-assumed = What is assumed: printed in the report. Strike out what you have measured.
