# Drawings
doc-north-letter = N
doc-kind-survey = yard survey
doc-kind-tape = tape sheet
doc-row-scale = scale
doc-row-date = date
doc-row-yard = yard
doc-row-free = free
doc-row-lengths = lengths
doc-scale-on = { $scale } on { $paper }
doc-lengths-metres = metres
doc-lengths-feet = feet and inches
doc-check-bar = Check the bar first: { $length } is { $paper }.
doc-caution-plan = This plan is advice: local codes and licensed people come first. Keep zones, doors and routes clear.
doc-legend = Legend
doc-legend-margin = margin, not painted
doc-legend-soft = surface that is not painted
doc-legend-clear = clear zone
doc-legend-alone = zone shared with nothing
doc-legend-remark = puddle, slope or track
doc-legend-floor = clear floor at a door
doc-legend-leaf = door or gate swings
doc-legend-drain = drain or cover
doc-legend-route = route kept open
doc-legend-wall = wall
doc-legend-fence = fence
doc-legend-hedge = hedge
doc-legend-kerb = kerb
doc-legend-drop = drop
doc-legend-open = open edge
doc-legend-tree = tree; the crown is a sign only
doc-legend-gate = gate
doc-legend-corner = corner, surveyed
doc-legend-inner = point inside, surveyed
doc-legend-stand = where staff stand
doc-inset = Survey
doc-inset-ellipses = 95 % ellipses, { $times } times the scale of this inset
doc-inset-doubtful = doubtful: measure it again
doc-inset-unchecked = hardly checked by the others
doc-stand = staff stand
doc-label-swing = 2 × pivot { $pivot } each way
doc-label-clear = { $clear } kept clear
doc-label-route = { $from } to { $to }, { $width } kept open
doc-label-door = { $name } door
doc-label-gate = { $name } gate
doc-label-opening = { $width } wide
doc-remark-puddle = puddle
doc-remark-old-paint = old paint
doc-remark-trike-path = trike path
doc-remark-slope = slope
doc-surface-asphalt = asphalt
doc-surface-concrete = concrete
doc-surface-paving = paving
doc-surface-old-paint = old paint
doc-surface-sealer = sealer
doc-surface-rubber = rubber surfacing
doc-surface-mulch = bonded mulch
doc-surface-carpet = carpet
doc-surface-loose-fill = loose fill
doc-surface-sand = sand
doc-surface-grass = grass
doc-surface-soil = soil
doc-surface-wood = wood
doc-surface-steel = steel
doc-surface-tactile = tactile paving
doc-told-title = { $name }: { $kind }
doc-told-yard = Plan of the yard { $name } at { $scale }, { $width } by { $height } overall, yard area { $area }; { $fixtures ->
        [one] one fixture
       *[other] { $fixtures } fixtures
    }, { $doors ->
        [one] one door
       *[other] { $doors } doors
    } and { $gates ->
        [one] one gate
       *[other] { $gates } gates
    }; the ground kept clear hatched by kind; dimensions, scale bar and title block.
doc-page-of = page {"{"}p{"}"} of {"{"}n{"}"}
doc-none = none
doc-take-care = Take care

# Survey report
doc-report-title = The survey of { $name }
doc-says = What the survey says
doc-verdict-good = The readings agree with each other as well as a careful tape can. The survey is good enough to plan and to paint from.
doc-verdict-good-but = { $count ->
        [one] One reading was set aside because the others speak against it.
       *[other] { $count } readings were set aside because the others speak against them.
    } Without { $count ->
        [one] it
       *[other] them
    } the readings agree as well as a careful tape can. Plan from this survey, and measure again before you paint.
doc-verdict-disagree = The readings disagree by more than a careful tape explains. Do not paint from this survey: measure again first.
doc-verdict-unchecked = The readings are just enough to draw the yard, and nothing checks them: a slip would not show. Take the extra readings below before you paint.
doc-verdict-loose = { $count ->
        [one] One point is not fixed by the readings: it is drawn where it may be.
       *[other] { $count } points are not fixed by the readings: they are drawn where they may be.
    } Take the readings below before you plan.
doc-says-areas = The yard measures { $yard }; { $free } of it may be painted. The figure after ± is half of the interval that holds the true value 95 times in 100.
doc-says-worst = The point known least well is { $point }: it lies within { $within } of where it is drawn, 95 times in 100.
doc-says-readings = { $readings ->
        [one] One reading was
       *[other] { $readings } readings were
    } used, { $dof } more than the shape needs. { $unchecked ->
        [0] Each is checked by the others.
        [one] One is hardly checked by the others: a slip in it could stay hidden.
       *[other] { $unchecked } are hardly checked by the others: a slip in one of them could stay hidden.
    }
doc-again = Measure these again
doc-next-best = These further readings would help most, the best first:
doc-next-fixes = { $from } to { $to }: it fixes { $point }.
doc-next-checks = { $from } to { $to }: it checks the reading { $reading }.
doc-next-separates = { $from } to { $to }: it tells { $readings } apart, if one of them is wrong.
doc-slip-metres = { $count ->
        [one] a whole metre
       *[other] { $count } whole metres
    } misread
doc-slip-feet = { $count ->
        [one] a whole foot
       *[other] { $count } whole feet
    } misread
doc-slip-tenths = { $count ->
        [one] a tenth of a metre
       *[other] { $count } tenths of a metre
    } misread
doc-slip-swapped = two digits swapped: { $read }
doc-slip-foot-inch = feet taken for inches, or inches for feet: { $read }
doc-slip-hook = the hook or ring of the tape, { $hook }, counted in or left out
doc-slip-one-of-these = one of these is wrong, and nothing tells which
doc-slip-unknown = not a usual slip: look at both ends
doc-noticed = What was noticed
doc-noticed-error = Wrong:
doc-noticed-warning = Look at this:
doc-noticed-advice = Good to know:
doc-picture = The survey drawn
doc-picture-alt = The surveyed points { $names } joined by their readings, each with its 95 % ellipse enlarged; { $doubtful ->
        [0] no reading is doubtful.
        [one] one reading is doubtful and dashed.
       *[other] { $doubtful } readings are doubtful and dashed.
    } The tables below give the same figures.
doc-readings = The readings
doc-readings-how = Doubtful readings come first, then those that the others hardly check. “Checked” says how much of a slip in a reading would show in the gap: 0 none of it, 100 all of it.
doc-reading-distance = { $from } to { $to }
doc-reading-along = { $from } towards { $to }, to { $point }
doc-reading-left = { $point } off the line { $from } to { $to }
doc-reading-square = square at { $at }, { $from } to { $to }
doc-reading-known-x = x of { $point }, known
doc-reading-known-y = y of { $point }, known
doc-column-reading = reading
doc-column-reads = reads, { $unit }
doc-column-others = others say, { $unit }
doc-column-probably = probably
doc-column-gap = gap, { $unit }
doc-column-checked = checked, %
doc-column-state = so
doc-state-set-aside = set aside: measure it again
doc-state-doubtful = doubtful: measure it again
doc-state-unchecked = hardly checked by the others
doc-state-agrees = agrees
doc-points = The points
doc-points-how = x runs along the first side and y to its left. “Sure to” is the long half-axis of the 95 % ellipse: the point lies that near to where it is drawn, 95 times in 100.
doc-column-point = point
doc-column-sure = sure to, { $unit }
doc-column-side = next side, { $unit }
doc-column-side-to = leads to
doc-side-to = { $to }
doc-point-held = held
doc-point-loose = loose
doc-blocked = What is kept clear, and why
doc-blocked-how = Patches may overlap, so that their areas add up to more than is taken. A local code, a product label or the maker of the equipment may ask for more: then that holds.
doc-why-footprint = it stands there
doc-why-clear-zone = clear zone round equipment
doc-why-alone = clear zone that no other equipment may share
doc-why-surface = this surface is not, or not yet, painted
doc-why-edge-margin = margin to a hard edge
doc-why-fixture-margin = margin to what stands
doc-why-drain = drain, cover or hydrant with its margin
doc-why-swing = a door or gate swings over it
doc-why-door-floor = clear floor in front of a door or gate
doc-why-route = walk that must stay open
doc-why-remark = the surveyor keeps it clear
doc-column-thing = what
doc-column-why = why
doc-column-area = area, { $unit }²
doc-column-rule = rule
doc-column-source = source
doc-assumptions = What this report takes for granted
doc-assume-level = Lengths are level: a tape on sloping ground reads a little long.
doc-assume-doubt = The doubt of each reading is the one given for the tape; a wrong zero or a stretched tape shifts all readings alike and does not show here.
doc-assume-free = What is kept clear is laid out from the edges, so the free ground is as sure as the yard.
doc-assume-straight = Sides run straight between corners.
doc-assume-crown = Crowns of trees are drawn as a sign; only the trunk was surveyed.
doc-assume-no-north = North is not known, so no shade is reckoned.
doc-before-you-go-on = Before you go on
doc-care-advice = Ask first: local codes, licensing rules, accessibility law, product labels and safety data sheets come before this plan; ask a licensed person where one is required.
doc-care-leave = Get the owner’s written leave, and find out who else uses or maintains the ground.
doc-care-zones = Keep markings and waiting children out of the zones shown; check again when equipment moves.
doc-care-doors = Keep doors, gates, fire routes and accessible routes open, while painting and afterwards.
doc-care-children = Keep children out while people work, and post someone.
doc-care-surfacing = Leave rubber surfacing, drains, covers, hydrants and road signs unpainted.
doc-care-old-paint = Have old paint tested before anyone sands, grinds or burns it: it may hold lead or chromate.
doc-care-bar = Measure the printed scale bar before you take a length from a drawing, and the third tape before you paint.
doc-care-tapes = Keep tapes flat, flag them, and reel them in when done: they trip people. A steel tape cuts and carries current; keep it from power.
doc-care-traffic = Stop traffic first: cones and a watcher where cars or deliveries can reach you.
doc-care-hot = Touch sun-heated ground with the back of the hand for five seconds first; work early, wear shoes, drink water.
doc-care-doors-taping = Keep doors, gates and fire routes open while you tape; tape when no children are in the yard.
doc-sources = Figures and sources used
doc-sources-how = Published: seen in a published source. Common practice: no source. From memory: not checked.
doc-standing-published = published
doc-standing-practice = common practice
doc-standing-memory = from memory
doc-standing-replaced = { $standing }; replaced by this project
doc-column-what = what
doc-column-figure = figure
doc-column-standing = standing

# Tape sheet
doc-tape-title = Taping { $name }
doc-field-who = taped by
doc-field-date = date
doc-field-tape = tape
doc-tape-sketch = Where to tape
doc-tape-sketch-alt = Sketch with the points { $names } and the lines to tape between them; the table below lists them in walking order.
doc-tape-sketch-rough = A sketch in the yard’s own shape, not to scale. Arrows show the way to walk.
doc-tape-sketch-order = A sketch before anything is measured: the points stand in the order you walk, not in the yard’s shape. Arrows show the way.
doc-before-you-tape = Before you tape
doc-hint-pull = Pull alike each time: a glass-fibre tape with { $glass } N, a steel tape with { $steel } N.
doc-hint-flat = Lay the tape on the ground, straight and without a twist; a bow of a hand’s width spoils the reading.
doc-hint-zero = Look where the tape’s zero is: at the hook, at the ring or past it. Use the same tape throughout.
doc-hint-aloud = One reads aloud, one says it back and writes. Whole metres or feet first.
doc-hint-spot = Mark each point on the ground and tape to the same spot every time.
doc-hint-hidden = Where something stands in the way, leave the line out and tape another to the same point.
doc-column-at = stand at
doc-column-to = tape to
doc-column-write = reading
doc-column-note = remark
doc-tape-first = Take these first
doc-tape-readings = Readings in walking order
doc-tape-how = Each side is taped twice, from opposite ends, and every point has at least { $least } readings, so that a slip shows. Do not copy the first reading: read again.
doc-tape-more = More readings
doc-tape-file = Copy the readings into tape.csv, one a row as called out: from, to, reading.
doc-tape-offsets = Points off a line
doc-tape-offsets-how = Lay one tape along the line. Set a right angle with a 3-4-5 triangle or by the shortest swing, read along the line to its foot, then off it: left of the line as you walk it is plus, right is minus.
doc-column-line = line
doc-column-measure = read
doc-measure-along = along
doc-measure-left = left
doc-line = { $from } to { $to }
