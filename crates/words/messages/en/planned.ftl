# The papers of a plan: shared words
page-kind-papers = plan
page-kind-plan = yard plan
page-kind-trial = try it with chalk
page-paint-chalk = Chalk
page-paint-straw = Straw
page-paint-harebell = Harebell
page-paint-sedge = Sedge
page-paint-hip = Hip
page-paint-madder = Madder
page-paint-sloe = Sloe
page-family = { $family ->
    [court] Hop-and-jump court
    [brook] Brook
    [spots] Stepping spots
    [pair] Jump pair
    [ring-sets] Ring sets
    [star] Direction star
    [number-line] Number line
    [number-court] Number court
    [letter-court] Letter court
    [fields] Shape and colour fields
    [compass] Compass of turns
    [straight-lane] Straight lane
    [wave-lane] Wave lane
    [zigzag-lane] Zigzag lane
    [straight-line] Straight line
    [wave-line] Wave line
    [zigzag-line] Zigzag line
    [spiral-lane] Spiral lane
    [eight-lane] Figure-eight lane
    [labyrinth-lane] Labyrinth lane
    [balance-lines] Balance lines
    [twin-tracks] Twin tracks
    [gallop-prints] Gallop prints
    [skip-prints] Skip prints
    [hop-prints] Hop prints
    [leap-prints] Leap prints
    [jump-prints] Jump prints
   *[other] { $family }
 }
page-group = { $group ->
    [all] the whole class
    [younger] the younger third
    [middle] the middle third
    [older] the older third
    [rest] those left over
    [rest-2] others left over
    [rest-3] still others
   *[other] { $group }
 }
page-name-group = { $name } for { $group }
page-name-own = { $family } “{ $name }”
page-gait = { $gait ->
    [jump] jump
    [hop] hop
    [leap] leap
    [gallop] gallop
    [slide] slide
    [skip] skip
    [court] hop and jump
    [run] run
    [walk] walk
   *[other] { $gait }
 }
page-on-foot = { $skill }, { $foot ->
    [R] right foot leads
   *[L] left foot leads
 }
page-both-feet = { $skill }, either foot leads
page-column-marking = marking
page-column-cost = cost, { $money }
page-column-ground = ground, { $unit }²
page-column-why = why
page-column-rule = rule
page-column-kind = it
page-column-held = held
page-column-limit = wanted
page-column-is = is

# The plan sheet
page-row-markings = markings
page-list = Markings
page-list-size = { $long } by { $broad }
page-list-envelope = ground needed in use
page-plan-lies = { $name } at { $x } along and { $y } across
page-plan-told = Plan of { $name } at { $scale } with its markings in colour, each with the ground it needs in use dashed and a number: { $markings }. Zones kept clear are hatched in grey; dimensions, scale bar and title block.

# A page for a marking
page-number = number { $number } on the plan
page-painted-alt = { $name } as painted, in { $colours }, with the ground that it needs in use dashed.
page-painted-caption = As painted on { $ground ->
    [asphalt] asphalt
   *[concrete] concrete
 }, { $scale }. Dashed: the ground that it needs in use.
page-fact-for = sized for
page-fact-skills = teaches
page-fact-lengths = lengths
page-fact-cells = use
page-fact-gives = gives
page-fact-cost = costs
page-fact-lies = lies at
page-fact-ground = needs
page-fact-words = spells
page-fact-words-not = does not spell
page-words = { $words } ({ $many } of { $of } words; the longest jump { $longest })
page-cells = { $cells ->
    [one] one cell
   *[other] { $cells } cells
 }, { $tracks ->
    [one] one child at a time
   *[other] { $tracks } children side by side
 }
page-tracks = { $tracks ->
    [one] one child at a time
   *[other] { $tracks } children side by side
 }
page-gives = { $minutes } minutes a week of an average child’s station time
page-cost = { $cost } in paint and tape
page-lies = { $x } along the first side, { $y } off it, turned { $turn }° anticlockwise{ $mirrored ->
    [yes] , mirrored
   *[no] { "" }
 }
page-used = As used
page-easiest = Easiest for a child of { $years }: { $skill }, { $contacts ->
    [one] one contact
   *[other] { $contacts } contacts
 }; it comes off { $share } times in 100.
page-hardest = Hardest that still comes off: { $skill }, { $contacts ->
    [one] one contact
   *[other] { $contacts } contacts
 }; { $share } times in 100 for the same child of { $years }.
page-only = For a child of { $years }: { $skill }, { $contacts ->
    [one] one contact
   *[other] { $contacts } contacts
 }; it comes off { $share } times in 100.
page-no-route = No route on feet is known for this class, so none is drawn.
page-drawn-at = { $scale }, lengths in { $unit }
page-suits = Whom it suits
page-suits-how = Per cent of the children of each age, and how many they are. Right foot solid, left open in the drawings above. Each child is well pitched with its own chance; the bracket holds their number 90 times in 100 (a Poisson-binomial count).
page-suits-nobody = No child of this class was reckoned on this marking.
page-suits-age = age, years
page-suits-well = well pitched
page-suits-bracket = 90 % interval
page-suits-easy = too easy
page-suits-hard = out of reach
page-suits-told = at { $age } years, of { $of } children { $well } well pitched (90 % interval { $low } to { $high }), { $easy } too easy, { $hard } out of reach
page-care-clear = Keep the dashed ground free of people and things while it is in use.
page-care-turn = One child at a time on each trail: the next starts when the last has left it.
page-care-lane = All go the same way, and who waits stays clear of the end, where others slow down.
page-care-watch = An adult leads and watches. Not when the ground is wet, icy or hot.

# A page for the director
page-director-title = { $name }: the plan on one page
page-no-layout = This record holds no layout yet.
page-gain = { $markings ->
    [one] One painted marking serves
   *[other] { $markings } painted markings serve
 } { $children ->
    [one] one child
   *[other] { $children } children
 } of { $low } to { $high } years. Used in { $sessions } led sessions a week of { $minutes } minutes, { $markings ->
    [one] it gives
   *[other] they give
 } the class { $share } % of the practice that we would wish for. Paint and tape cost about { $cost }.
page-gains = What the class gains
page-gains-how = How much of the practice wished for each age gets, in an average week. “None” means that the skill is not yet asked of that age.
page-column-skill = skill
page-column-wanted = wished for, min
page-column-age = { $age } years ({ $count })
page-column-all = all
page-buy = What it costs and what to buy
page-buy-told = About { $cost } in paint and masking tape. Buy non-slip line paint, two coats: { $paints }; masking tape: { $tape }. Whole cans, primer and tools come on top.
page-buy-left = Of the budget of { $budget }, { $left } is left for them.
page-need = Five ticks we need from you
page-need-leave = The owner agrees in writing that we paint, and where.
page-need-codes = The licensing body, fire safety and accessibility have no objection to this plan.
page-need-surface = The surface is sound, clean and at least as old as the paint’s label asks; old paint has been tested.
page-need-days = Two dry days are set when no child uses the yard, and somebody keeps the gate.
page-need-money = The money is there, and one person leads the sessions in the first weeks.
page-sure = How sure we are
page-bound = The plan gives { $value } %; no choice of markings could give more than { $bound } %. It is within { $gap } % of the best there can be.
page-binds = { $of ->
    [money] { $more } more money: { $change } % more practice
    [ground] { $more } more free ground: { $change } % more practice
    [time] { $more } minutes more a session: { $change } % more practice
   *[staff] { $more } more member of staff outside: { $change } % more practice
 }
page-binds-these = What would give more: { $what }.
page-binds-nothing = Neither more money nor more ground, time or staff would change it noticeably.
page-sure-children = What each child can do was reckoned from published averages for the age, unless somebody measured it. Try the figures with chalk first: the trial sheet says how.
page-sure-rules = { $broken ->
    [0] Every rule of safety that the plan was held to holds
    [one] One rule that must hold is broken
   *[other] { $broken } rules that must hold are broken
 }; { $unmet ->
    [0] every wish is met
    [one] one wish is not met
   *[other] { $unmet } wishes are not met
 }. The last page lists them.
page-without = For staff only, no station fits yet: { $lines }. Give these children a led game of their own.
page-without-some = { $skill }: { $who }
page-without-all = { $skill }: the whole class
page-without-nobody = Every child has at least one station that fits for each skill it is asked to practise.
page-care-codes = Ask first: local codes, licensing, accessibility law and product labels come before this plan.
page-care-children = Keep children out while people work and until the paint is dry and grips when wet.
page-care-wet = Paint alone teaches nobody: an adult leads, and closes a marking that is worn or slippery.

# What was left out, the budget, the rules
page-left-out = What was left out, and why
page-left-out-none = Nothing that could have been painted was left out.
page-left-out-sizes = { $name }, { $sizes } sizes
page-left-out-how = Each of these was reckoned with the same class, ground and prices.
page-curve = What another budget would give
page-curve-how = Full line: the best plan found at each budget. Dashed: what no plan of that budget can pass.
page-curve-bound = bound
page-curve-value = best found
page-curve-budget = budget, { $money }
page-curve-ours = this budget
page-curve-told = with { $budget }: { $value } % found, at most { $bound } %
page-audit = The rules, held against the plan
page-audit-how = “Must” rules have to hold; “should” rules are wishes that the plan weighs.
page-rule-must = must
page-rule-should = should
page-audit-all = Every rule and every wish is met.
page-audit-unmet = Those that are not met:
page-whole-layout = the whole plan

# Chalk first
page-trial-title = { $name }: chalk first
page-trial-why = Before anything is painted, four children try two figures at three sizes, { $tries } tries each. It takes half an hour with chalk or masking tape, and shows which size this class needs.
page-trial-chalk = What to chalk
page-trial-varies = Chalk it three times. What changes: { $what }.
page-trial-told = { $name } in outline; { $what } is chalked at { $sizes }.
page-trial-tries = Who tried, what came off
page-trial-how = { $tries } boxes a size. Tick a try that came off: every landing inside, no fall, the pattern kept. Cross one that did not. Leave a box empty for a try not made. Mix the sizes; begin with A.
page-trial-child = child’s code
page-trial-figure = figure
page-trial-size = size { $letter }
page-trial-back = Type it back into trials.csv, one row a child, figure and size: n is the tries made, good those that came off. Head: { $head }. A row as it would look: { $row }. Then plan again.
page-trial-care-warm = Warm up first, and let each child look on once before it tries.
page-trial-care-dry = Only on dry, swept ground, in shoes that grip, with the way and two metres past its end free.
page-trial-care-stop = Stop when a child is tired, afraid or has had enough: that is no failed try.
page-base-title = { $name }: a ten-minute baseline
page-base-why = Eight to ten children are enough. What they reach replaces the averages, and the plan fits this class better.
page-base-line = Chalk a line and lay a tape from it, flat on the ground.
page-base-jump = Jump: both feet behind the line, jump as far as you can, land on both. Three goes; measure from the line to the nearer heel.
page-base-hop = Five hops: stand on one foot behind the line, hop five times on it without a pause. Measure from the line to the heel of the last landing. One series on each foot; a second and third where there is time.
page-base-cannot = Write 0 where a child cannot yet hop five times on that foot; leave a box empty where nothing was tried.
page-base-feet = Say right and left from the child’s side. Praise every go alike.
page-base-height = height { $unit }
page-base-column-jump = three jumps { $unit }
page-base-column-right = five hops, right { $unit }
page-base-column-left = five hops, left { $unit }
page-base-unit-cm = (cm)
page-base-unit-in = (in)
page-base-back = Type it back into children.csv, one row a child: height; the best jump in jump_best; the best series in hops_right and hops_left. Write the unit after each figure. Children under { $youngest } years are not in this class.
page-base-care-names = Write codes, never names, and keep the sheet with the staff.

# What the class has shown
page-learned = What the class has shown
page-learned-how = How far one comfortable flight carries. Open dot and dashes: what the age says. Solid: what is known now, with the middle half thick and nine tenths thin. Nothing here is a mark: it says how sure the plan may be.
page-learned-never = The intervals speak of one flight. A child who had a bad day, or a good one, moves them; more tries on the chalk trial make them shorter.
page-learned-child = child
page-learned-years = age
page-learned-seen = seen
page-learned-reach = reach
page-learned-before-now = before / now, { $unit }
page-learned-measured = { $count ->
    [one] best measured
   *[other] { $count } bests measured
 }
page-learned-tries = { $good } of { $n } tries
page-learned-checks = { $met } of { $n } checks
page-learned-others = the others only
page-learned-told = { $child }: { $seen }; before { $before }, now { $now }, { $low } to { $high }.
page-learned-age = age { $age }
page-learned-group = group { $group }
page-learned-class = the class
page-learned-shared = in common
page-learned-data = told by
page-learned-told-by = { $told } of { $of } children, { $tries } tries
page-learned-prior = before, { $unit }
page-learned-now = now, { $unit }
page-learned-interval = nine tenths

# The gallery of the documentation
gallery-page = # The gallery
    {""}
    Every family, sized by the program for eight children of three, four and five years (in the middle of the year), drawn by the program
    itself as it is painted on asphalt. The dashed line is the ground that it needs in use. The sizes rest on averages for the age: a class
    that was measured gets its own. Drawn anew by `CHALKYARD_BLESS=1 cargo test --release -p document --test gallery`.
gallery-says = { $name } at the sizes of three, four and five years, painted on asphalt, with the ground that it needs in use.
gallery-age = { $years } years, { $scale }

# Set-out
page-kind-setout = set-out
page-setout-title = { $name }: set-out
page-setout-care-dry = Only on dry, swept ground. Keep children and bystanders out while tapes lie across the yard.
page-setout-care-ends = Hold tapes taut and level, the hook on the surveyed point. Nobody walks over a taut tape.
page-setout-care-check = Do not paint from a mark whose check is off by more than the sheet allows.
page-setout-how-hook = Hook two tapes to the two points named. Cross them at the two lengths. Chalk a cross where they meet.
page-setout-how-left = Stand at the first point and look to the second: the mark lies on your left.
page-setout-how-check = Read the third tape and write it down. Farther off than the sheet allows: measure again, then set the mark out again.
page-setout-how-figure = When all marks of a marking hold, snap its chalk line and go on from there (last pages).
page-setout-walk = { $points } marks, { $walked } to walk from the first to the last. Lengths are rounded to { $step }.
page-setout-number = no.
page-setout-mark = mark
page-setout-what = what lies there
page-setout-first = first tape
page-setout-second = second tape
page-setout-third = check
page-setout-reads = reads
page-setout-role = { $role ->
    [origin] place: { $feature }
    [direction] turn: { $feature }
   *[check] check: { $feature }
 }
page-setout-feature = { $kind ->
    [cell] middle of cell { $name }
    [lane-start] start of lane { $name }
    [lane-end] end of lane { $name }
    [lane-far] far point of lane { $name }
    [bend] bend of the lane
    [wait] waiting spot { $name }
   *[corner] corner of shape { $name }
 }
page-setout-within = at most { $limit } off
page-setout-move = Carry tape { $tape } to { $to }
page-setout-instead = If a surveyed point is covered
page-setout-instead-how = Where something stands on a point on the day, use these two tapes. The mark lies on the left as before.
page-setout-without = without
page-setout-map = The plan with the surveyed points that tapes hang on, as squares, and the marks as crosses with their number in the walk.
page-setout-figures = From the marks to the figures
page-setout-figures-how = The chalk line runs from the first mark of a marking to its second. Lengths along it count from the first; left and right are as you look along it.
page-setout-chalk = Snap a chalk line between { $ends }: { $length }.
page-setout-square = A right angle at the first mark: { $along } along the line, { $aside } to the { $side ->
    [left] left
   *[right] right
 }, { $across } from end to end.
page-setout-span = Check between { $ends }: { $length }, at most { $limit } off. It reads __________
page-setout-along = along
page-setout-left = to the left
page-setout-right = to the right
