# The plan on paper
paper-title = A plan for { $name }
paper-foot = { $name } plan
paper-gain = { $markings ->
    [one] One painted marking gives
   *[other] { $markings } painted markings give
 } { $children } children { $share } % of the practice that we would like each of them to have, if adults lead the games. Paint alone did not raise activity in the preschool trial we know of (CAR09); led use is what works.
paper-week = It takes { $sessions } sessions a week of { $minutes } minutes for { $weeks } weeks. { $outings ->
    [one] All go out together
   *[other] They go out in { $outings } turns
 }, at most { $together } at a time.
paper-skills = What the children practise
paper-buy = What it costs
paper-sure = How sure we are
paper-need = What we need from you
paper-column-skill = skill
paper-column-wanted = wanted, min a week
paper-column-planned = planned, min a week
paper-column-share = share
paper-column-colour = colour
paper-column-litres = litres
paper-column-marking = marking
paper-column-cost = cost
paper-column-why = why
paper-column-rule = rule
paper-column-want = wanted
paper-column-is = is
paper-column-unit = unit
paper-column-age = { $age } years
paper-cost = About { $cost } { $currency } for paint and masking tape, of a budget of { $budget }. Tape: { $tape } m. Whole cans, primer, grit and tools come on top. Prices are the project’s, or common practice where it names none.
paper-bound = No choice of these markings could give more than { $bound } % on this ground, with this money and time: the plan is within { $gap } % of that. This is proven, not guessed.
paper-prior = How far each child jumps and hops rests on growth tables and on our judgement until somebody measures. Chalk the figures before you paint, note ten minutes of jumps and hops, and plan again.
paper-binds = { $of ->
    [money] { $more } more money would add { $change } %.
    [ground] { $more } m² more free ground would add { $change } %.
    [time] { $more } minutes more a session would add { $change } %.
   *[staff] { $more } more staff would add { $change } %.
 }
paper-without = For staff only: no station yet for { $children }. Plan theirs by hand, in the same place with the same children.
paper-need-leave = The owner’s leave in writing, for this plan and these paints.
paper-need-dates = Two dry days on which the yard can be closed, and the day after.
paper-need-money = The money above, and a person who buys.
paper-need-people = Four to six adults for the painting, and staff for the sessions.
paper-need-closed = A notice to families, and the yard roped off until the paint is hard.
paper-care-advice = Ask first: local codes, licensing rules, accessibility law and product labels come before this plan; ask a licensed person where one is required.
paper-care-zones = Keep markings and waiting places out of the fall and swing zones; if equipment moves, plan again.
paper-care-routes = Keep doors, gates, fire routes and accessible routes open, while painting and afterwards.
paper-care-adult = Supervise play on the markings as on any equipment; take one out of use when it peels, lifts or turns slick.
paper-left-out = What was left out, and why
paper-why = { $why ->
    [refused] the programme refuses it
    [no-gain] it would add nothing for this class
    [same-family] { $by } serves that group already
    [money] the money does not reach
    [ground] the free ground does not reach
    [no-place] it has nowhere to lie among the others
   *[outdone] the others do better without it
 }
paper-none = none
paper-audit = The rules
paper-audit-told = { $hard } hard rules were held against the plan; { $broken ->
    [0] all hold
   *[other] { $broken } are broken
 }. { $unmet ->
    [0] Every wish is met.
    [one] One wish is not met.
   *[other] { $unmet } wishes are not met.
 }
paper-marking = { $number }  { $name }
paper-lengths = A { $family } with { $lengths }. Its start lies at x { $x }, y { $y } of the survey, turned { $turn } degrees.
paper-painted-alt = The { $family } as painted, from above, with its length
paper-scale = 1:{ $scale }
paper-easiest = 1, the easiest route chosen for a child: { $gait }, { $child }, { $contacts } contacts, comes off { $share } times in 100.
paper-hardest = 2, the hardest: { $gait }, { $child }, { $contacts } contacts, { $share } in 100. Right foot solid, left open.
paper-strips = Whom it suits best: { $gait }. Children of each age.
paper-strip = { $well } of { $count } well pitched
paper-strip-key = solid: well pitched; dotted: too easy; lines: out of reach; dot and bracket: expected number and 90 % interval
paper-suits = Children well pitched, expected of all, with the 90 % interval:
paper-suits-nobody = No child of this class can use it yet.
paper-of = { $well } of { $count } ({ $low } to { $high })
paper-on-foot = { $skill }, { $foot ->
    [R] right leads
   *[L] left leads
 }
paper-skill = { $skill ->
    [jump] jump
    [hop] hop
    [leap] leap
    [gallop] gallop
    [slide] slide
    [skip] skip
    [run] run
    [walk] walk
    [court] hop and jump
   *[other] { $skill }
 }
paper-colour = { $colour ->
    [chalk] Chalk, off white
    [straw] Straw, yellow
    [harebell] Harebell, light blue
    [sedge] Sedge, green
    [hip] Hip, salmon
    [madder] Madder, dark red
   *[sloe] Sloe, dark blue
 }

# Before paint
trial-title = Chalk first: { $name }
trial-foot = { $name } trial
trial-why = Before you paint, chalk or tape these sizes on dry ground, away from zones, doors and routes. Let four children try each, a few tries apiece, and note how many came off well: the whole route, balanced, without a stop. A child who does not want to is noted with a dash.
trial-figures = The figures to chalk
trial-sizes = { $family } for { $group }: { $lengths }
trial-tries = Tries
trial-column-child = child
trial-column-figure = figure
trial-column-tries = tries
trial-column-good = came off
trial-back = Type the tries into trials.csv, one row a child and figure: child, marking, n, good. Then run the plan again: it says what changed.
trial-baseline = Ten-minute baseline
trial-baseline-how = Eight to ten children. Best of three jumps from a line, toes to the nearer heel. Then five hops on each foot, from the toes at the start to the heel at the end; 0 where it does not come yet.
trial-column-jump = best jump
trial-column-right = five hops, right
trial-column-left = five hops, left
trial-baseline-back = Type them into children.csv: jump_best, hops_right, hops_left. Codes only, never names.
trial-care-warm = Warm up first; shoes that hold; no one else on the figure.
trial-care-grip = Wet chalk and tape edges are slippery: dry ground only, and take the tape up afterwards.
trial-care-stop = Stop when a child tires or does not want to.
