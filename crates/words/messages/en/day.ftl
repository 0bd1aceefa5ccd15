# The paper for the painting day.
page-kind-day = the painting day
day-title = { $name }: the painting day
day-care-advice = This plan is advice. Local codes, licensing rules, accessibility law, product labels and safety data sheets come first. Ask a licensed person where one is required.
day-care-leave = Have the owner’s written leave. Ask who else uses or mends the surface.
day-care-zones = Keep all markings and waiting places out of the fall and swing zones shown. If equipment has moved, check again.
day-care-open = Keep doors, gates, fire routes and accessible routes open, while you paint and afterwards.
day-care-closed = Close the yard to children until the paint is hard. Rope it off and post someone.
day-care-traffic = Stop traffic first: cones and a watcher where cars or deliveries can reach the crew.
day-care-heat = Sun-heated ground burns. Lay the back of your hand on it for 5 seconds, wear shoes, use knee pads, work early, drink water.
day-care-old = Old paint may hold lead or chromate. Do not sand, grind or burn it. Have it tested first.
day-care-chemicals = Water-borne still means chemicals: gloves, eye protection, fresh air, no food or drink near paint. Nobody under 16 handles solvents.
day-care-grit = Sand and grit make harmful dust: pour low, damp down, wear a fitted mask, never blow it clear. Pressure washers and blowers: trained adults only, eyes covered.
day-care-tapes = Tapes and strings trip people: keep them flat, flag them, reel them in when done. A steel tape can cut, and conducts near power.
day-care-blades = Cut with a sharp blade, away from you, on a mat, with a cut-resistant glove on the other hand. Count blades in and out. Children away.
day-care-laser = Never laser-cut PVC or a plastic that you do not know. Lift sheets with two people. Put them down in gusts.
day-care-dry = Do not paint when it is wet, when rain is near, in frost, or with the ground less than 3 °C above the dew point. Read the label’s limits.
day-care-slip = Wet paint and fresh smooth paint are slippery. Test the grip wet before children use it.
day-care-drain = Do not rinse brushes into storm drains or soil. Do not paint rubber surfacing, drains, covers, hydrants, parking or road signs.
day-care-aid = Keep first aid, water and a telephone on site. Know any allergy in the crew. Wash hands.
day-before = Before you begin
day-before-leave = The owner’s leave is here, and the yard is closed and roped off.
day-before-weather = No rain for 24 hours, and none is forecast for 12 hours after the last coat.
day-before-surface = Ground and air are between 10 and 35 °C. The ground was read in the sun and in the shade.
day-before-damp = A sheet of clear plastic, taped to the ground for two hours, shows no damp.
day-before-swept = Swept and washed. Cracks wider than 10 mm and edges higher than 6 mm are left out.
day-before-bar = The scale bar on the plan was measured.
day-before-traffic = Gate locked or watched, cones out.
day-before-told = All know who is who, where the first aid is, and the way out.
day-when = When to paint
day-when-no-file = The project holds no weather file. Put one into the folder weather (docs/format.md), or read the hour’s air, ground and humidity on the spot.
day-when-year = In a typical year at { $place } paint dries best in { $months }. Hours in which every rule is kept, in the crew’s hours of the day; days with enough of them in a row. A typical year is no forecast.
day-when-forecast = { $count ->
    [0] The forecast for { $place } has no window in which the work is surely possible.
    [one] The forecast for { $place } has one window in which the work is possible.
   *[other] The forecast for { $place } has { $count } windows in which the work is possible.
 }
day-column-month = month
day-column-hours = hours
day-column-days = days
day-column-unknown = not known
day-column-from = from
day-column-to = to
day-column-children = children from
day-column-verdict = what is said
day-verdict-fine = fine
day-verdict-unknown = something is not known: ask first
day-verdict-not = not
day-month = { $month ->
    [1] January
    [2] February
    [3] March
    [4] April
    [5] May
    [6] June
    [7] July
    [8] August
    [9] September
    [10] October
    [11] November
   *[other] December
 }
day-work = Order of work
day-work-told = { $people ->
    [one] One person is
   *[other] { $people } people are
 } done at { $end }, if all goes well. { $proven ->
    [yes] With these people, plates and tapes nobody can be done sooner.
   *[no] A better order could save { $hours ->
        [0] { $minutes ->
            [one] one minute
           *[other] { $minutes } minutes
        }
       *[other] { $hours } hours
    } at most, nights among them.
 }
day-work-children = Children may come back from { $when } on, when an adult has tried every marking. Until then the yard stays roped off.
day-chart-told = Day { $day }: who works on what; { $people ->
    [one] one line
   *[other] { $people } lines
 } for the people, hours across, solid bars for coats, numbers as in the list below.
day-column-task = task
day-column-people = who
day-column-waits = waits for
day-task = { $name }: { $what }
day-task-coat = { $name }: { $colour }, coat { $coat }{ $any ->
    [yes] , through { $through }
   *[no] { "" }
 }
day-clock = day { $day }, { $time }
day-setout = Set-out
day-stencils = Stencils
day-stencils-told = { $stencils ->
    [one] One stencil is
   *[other] { $stencils } stencils are
 } laid { $uses ->
    [one] once
   *[other] { $uses } times
 } for each coat. They are cut from { $sheets ->
    [one] one sheet
   *[other] { $sheets } sheets
 }; the files are in out/cut.
day-stencil-up = “This side up” is read from above. The arrow looks the way in which children arrive.
day-stencil-ticks = Lay the plate on the chalk ticks, tape it down, hold it flat where you roll.
day-stencil-ties = Lift it while the paint is wet, straight up. Paint in the ties that were added with a small brush; the slits along the way stay open.
day-stencil-clean = Wipe both sides. Clean it well after every five uses.
day-stencils-alt = Stencils with their openings in colour: { $stencils }.
day-column-stencil = no.
day-column-shows = shows
day-column-plate = plate, { $unit }
day-column-panels = panels
day-column-where = laid on
day-laid = { $name } × { $times }{ $over ->
    [0] { "" }
   *[other] , { $over } face down
 }
day-motif = { $motif ->
    [ring] ring
    [cell] cell
    [disc] disc
    [half-moon] start
    [chevron] go
    [stroke] short stroke
    [print] footprint
    [glyph] { $glyph }
   *[other] shape
 }
day-taped = Without a stencil
day-taped-how = These are rolled between chalk lines or tape. Pull the tape while the paint is tacky.
day-column-colour = colour
day-column-shapes = shapes
day-column-edge = edge, { $unit }
day-paint = Paint
day-paint-how = Litres with what stays on tray, roller and stencil, and a reserve for touching up.
day-column-coats = coats, L
day-column-need = needed, L
day-column-cans = cans
day-column-over = left, L
day-no-can = no can is known
day-shop = To buy and to bring
day-shop-total = { $unknown ->
    [0] All of it costs { $known }.
    [one] It costs at least { $known }: one line has no price yet.
   *[other] It costs at least { $known }: { $unknown } lines have no price yet.
 } The paint wants a fresh coat after about { $months } months; the years that follow are reckoned for { $years ->
    [one] one year
   *[other] { $years } years
 }.
day-shop-paint = { $cans } { $colour }: { $price }
day-shop-primer = { $cans } primer: { $price }
day-shop-sheets = { $count ->
    [one] 1 sheet for stencils
   *[other] { $count } sheets for stencils
 }
day-shop-line = { $count } { $piece ->
    [yes] × { $thing }
   *[no] { $unit } of { $thing }
 }: { $price }
day-shop-how = Match a dry swatch of each colour before you buy. Water-borne, low in solvents, for outdoor floors; keep the label.
day-price-unknown = ask the price
day-rain = When it rains
day-rain-stop = Stop. Put the lids on. Bring the plates in, wet side up.
day-rain-cover = Do not cover wet paint with plastic: it sticks. Drops that fall on fresh paint leave marks; let them.
day-rain-wash = Keep run-off out of the drain: lay a wet rag round it, and take up what runs.
day-rain-wait = Wait until the ground has been dry for 24 hours and the plastic sheet shows no damp.
day-rain-mend = Wash off what has not held, let it dry, and lay the plate on the chalk ticks again. Set out anew what the rain has washed away.
day-rain-rope = Leave the yard roped off. Tell the director when children may come back.
day-done = Before you leave
day-done-checks = Every mark’s check was read and held, and stands in checks.csv.
day-done-blades = Blades are counted, tapes and strings reeled in.
day-done-brushes = Brushes were washed in a bucket or a sink, never in a storm drain. Leftovers go where the town says.
day-done-grip = A painted patch was tried wet with a shoe.
day-done-open = Doors, gates and routes are open. The wet paint is roped off, and someone is posted.
day-done-photo = A picture was taken of each marking from the same spot, without children.
day-done-stencils = Plates are clean, dry and stored flat; the office knows where.
day-leader = Who led
day-built = As built
day-built-how = What was really painted. Move the marking in layout.toml by what is written here, and lock it.
day-built-moved = moved by
day-built-paint = paint, batch
day-built-coats = coats
day-built-degrees = °C, %
cut-units = Units: mm, 1:1
cut-square = Measure: 100 mm, give or take 0.5
cut-side-up = This side up
cut-window = Paint at { $name }
page-kind-tiles = plate at 1:1
tiles-map = Map of the pages of { $panel }: { $columns } across, { $rows } down, with the lines to cut.
tiles-page = Page { $page } of { $panel } at 1:1: the lines to cut that fall on it, marks to trim at, a bar of 100 mm and one of 4 inches.
tiles-scale = Print at 100 %, not fitted to the page. Measure both bars: half a millimetre off is too much.
tiles-glue = Trim at the marks, lay each page on the dashed line of its neighbour, and glue. Cut with the blade away from you.
tiles-right = right: { $page }
tiles-below = below: { $page }
