# Papers for the office: leave, risks, a letter home, upkeep.
page-kind-office = papers for the office
office-leave-title = { $name }: leave to paint
office-leave-asks = We ask the owner of the ground for leave to paint { $markings ->
    [one] one play marking
   *[other] { $markings } play markings
 } in the yard of { $name }. The plan sheet shows where each one lies.
office-column-colours = colours
office-column-painted = painted, { $unit }²
office-leave-how = How it is done
office-leave-paint = We use water-borne marking paint made for outdoor floors, with fine rounded grit in the last coat. Its label and safety sheet are kept with this paper.
office-leave-open = Doors, gates, fire routes and accessible routes stay open while we paint and afterwards.
office-leave-not-on = Nothing is painted on rubber safety surfacing, drains, covers, hydrants, parking or road signs.
office-leave-keep = We look at the paint every month, and take a marking out of use when it lifts or turns slick.
office-leave-remove = When it is no longer wanted, we wear it off or paint it over in the colour of the ground. We never burn or grind old paint.
office-leave-needs = Before the first coat
office-tick-owner = The owner, and whoever rents the ground, agree in writing.
office-tick-others = Everybody else who uses or mends the surface has been told.
office-tick-surface = The surface may be painted: its age, its sealer and any old paint are known. Old paint was tested for lead.
office-tick-routes = The fire officer or the licensing office has seen the plan where the law asks for it.
office-tick-insurer = The insurer has been told.
office-tick-licence = Local rules on colours, access and playgrounds were looked up.
office-product = Paint, maker and product
office-repairs = Who mends it
office-from = From
office-until = Until
office-owner = Owner
office-signed = Signed
office-date = Date
office-risk-title = { $name }: gains and risks
office-risk-benefit = Won: { $children ->
    [one] one child practises
   *[other] { $children } children practise
 } jumping, hopping, leaping, galloping, sliding and skipping on { $markings ->
    [one] one marking
   *[other] { $markings } markings
 } that fit what they can do. The plan gives { $share } % of the practice that is wanted for them.
office-risk-how = Some risk is part of play: children learn by it. This sheet looks for the harm that teaches nothing. It is filled in from the plan. Walk the yard with it, correct it, and score each line before and after what you do about it.
office-column-hazard = what could go wrong
office-column-here = in this yard
office-column-control = what we do
office-column-before = before
office-column-after = after
office-risk-scale = Score: how likely (1 hardly ever, 5 often) times how bad (1 a graze, 5 for life). Do not open a marking whose score after is 10 or more.
office-risk-more = What else there is
office-filled-by = Filled in by
office-review = Look again on
office-care-law = This sheet is a help and no certificate. Local codes, licensing rules and the makers’ sheets come first.
office-care-ask = Ask a licensed person where one is required.
office-hazard-fast = Fast feet: children run into each other, a wall or a gate
office-hazard-equipment = Children stray into a swing or a slide’s end
office-hazard-trip = They trip on an edge, a drain or a crack
office-hazard-sight = Nobody sees a child who needs help
office-hazard-ways = A way out is blocked
office-hazard-wet = Paint is slippery when wet
office-hazard-heat = Sun, heat, hot ground
office-hazard-crowd = Too many at once
office-hazard-cars = Cars or deliveries in the yard
office-hazard-work = The painting day: fumes, blades, dust, wet paint
office-here-lanes = { $count ->
    [0] No lane.
    [one] One lane: { $lanes }.
   *[other] { $count } markings with lanes: { $lanes }.
 }
office-here-equipment = { $count ->
    [0] No equipment.
   *[other] { $fixtures }.
 }
office-here-drains = { $count ->
    [0] No drain or cover was surveyed.
   *[other] { $fixtures }.
 }
office-here-ways = { $doors ->
    [one] One door
   *[other] { $doors } doors
 }, { $gates ->
    [one] one gate
   *[other] { $gates } gates
 }, { $routes ->
    [one] one route
   *[other] { $routes } routes
 } kept open.
office-here-rules = { $checks ->
    [0] { "" }
    [one] { $off ->
        [0] The one check of the plan holds.
       *[other] The one check of the plan does not hold: see the audit.
    }
   *[other] { $off ->
        [0] All { $checks } checks of the plan hold.
        [one] One of { $checks } checks of the plan does not hold: see the audit.
       *[other] { $off } of { $checks } checks of the plan do not hold: see the audit.
    }
 }
office-here-look = To be looked at in the yard.
office-here-crowd = { $out ->
    [one] One child is
   *[other] At most { $out } children are
 } out together.
office-here-work = The pages for the day say who does what.
office-control-fast = All go one way. Waiting spots lie off the lane. A clear run-out at the end. An adult stands where the lane ends.
office-control-equipment = Nothing is painted in the zones kept clear. Swings are out of use while a marking beside them is in use. Check again when equipment moves.
office-control-trip = Sweep, and mend edges and cracks first. No landing near a drain.
office-control-sight = The adult stands at the marked place and can see all. No place to stand: leave the marking out of free play.
office-control-ways = Waiting children stand off the way. Nothing stands in it.
office-control-wet = Grit in the last coat. Test wet before children use it, and each season. Closed when wet, icy or mossy.
office-control-heat = Hand on the paint for five seconds. Shade, hats, water. The weather page says when to stay in.
office-control-crowd = Groups of four at a marking, side by side where it has two tracks. Nobody waits for more than 15 seconds.
office-control-cars = Gate locked, cones out, one person watches. No play while a vehicle moves.
office-control-work = No children in the yard until the paint is hard. Gloves, eyes covered, fresh air. Adults hold the blades. Wash hands.
office-letter-title = New paths to play on at { $name }
office-letter-what = Dear families, we are going to paint shapes and paths on the ground of our yard. Children will jump, hop, leap, gallop, slide and skip on them.
office-letter-why = Children of this age love to move, and they learn these moves best when an adult plays along. Each shape is sized for the children of this group.
office-letter-when = We play there { $sessions ->
    [one] once a week
   *[other] { $sessions } times a week
 } for { $minutes } minutes, in small groups. Nobody has to. A child who does not want to may watch or play something else.
office-letter-bring = Please send shoes that stay on and do not slip, a hat for the sun, a bottle of water, and clothes that may get dirty. Cool air does not make children ill: a jacket is enough.
office-letter-watch = Children can fall when they run, as they do anywhere. We keep the ground clean, look at the paint every month, and stay in when it is too hot, too cold, wet or smoky.
office-letter-leave = May we?
office-letter-leave-how = Your child plays on the paths in any case. For the rest we ask you. What you do not tick, we do not do.
office-consent-checks = You may note which moves my child can do. My child has a code there, never a name.
office-consent-monitor = My child may wear a small belt that measures movement on some days.
office-consent-photo-learning = You may take pictures of my child to teach the staff. They stay in the house.
office-consent-photo-print = You may print or publish pictures of my child.
office-consent-keep = You may keep the notes, without any name, after my child has left.
office-letter-stop = You can change your mind on any day: tell us, and we stop and delete what we have.
office-code = Child’s code
office-contact = Your contact here
office-telephone = Telephone
office-log-title = { $name }: looking after the paint
office-log-when = Who looks:
office-log-month = Every month: walk round, two minutes.
office-log-half = Every six months: score each marking below. Take the picture from the same spot, without children.
office-log-winter = After winter, and after anybody has dug, driven or cleaned there: score again.
office-log-close = Close a marking at once where it is slippery when wet, or lifts where feet land.
office-log-refresh = Paint again when less than 70 % of it is left, when it stands out too little from the ground, or where an edge lifts by more than 5 mm.
office-log-years = Feet wear paint: about { $months } months after painting 70 % of it is left. { $known ->
    [yes] Painting and refreshing cost about { $cost } a year over { $years } years, at the prices that are known.
   *[no] Prices are missing, so nobody can say what a year costs.
 }
office-log-look = Score
office-log-score = 0 good, 1 worn a little, 2 mend this season, 3 close now. Seen from 6 m; edges sharp; nothing lifts; grips when wet; no cracks.
office-column-seen = seen
office-column-edges = edges
office-column-lifts = lifts
office-column-grip = grip
office-column-cracks = cracks
office-column-do = to do
office-log-done = What was done
office-column-done = what was done, colour, coats
office-column-who = who
