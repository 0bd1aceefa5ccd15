# The yard itself
yard-no-place = The yard's corners cannot be placed.
yard-no-area = The boundary encloses no ground.
yard-crosses-itself = The boundary crosses itself.
yard-check-readings = Check the readings of the boundary.
yard-check-order = Check the order of the points in boundary: one walk round the yard, no corner twice.
place-outside = { $name } lies nowhere near the yard.
radius-odd = { $name } has a radius of { $radius }; that cannot be.
outline-crosses-itself = The outline of { $name } crosses itself. All ground within its outermost corners is taken.
outline-check-order = Name the corners in the order of one walk round it.
fixture-outside-yard = { $name } lies { $off } outside the yard.
fixture-check-points = Check the readings of its points.

# Clear zones
zone-from-memory = The clear zone of { $fixture } rests on a figure from memory.
zone-use-makers-sheet = Put the figure of the maker's sheet into [figures] of project.toml.
zone-height-unknown = { $fixture } has no height. It is taken as { $taken }, which errs to safety.
zone-tell-height = Measure the height of fall or of the platform and add height.
zone-measure-odd = { $fixture } has a measure of { $measure }; it is not used.
zone-measure-between = between nothing and { $most }
zone-no-rule = No rule covers { $fixture }. It gets the widest zone, { $taken }.
zone-name-kind = Say what kind of thing it is, if it is one of the known kinds.
fall-too-high = { $fixture } has a fall of { $height }.
fall-at-most = The European norm allows at most { $most }.
fall-ask-inspector = Ask a playground inspector before children use it.
slide-exit-unknown = { $fixture } has no exit. Its exit zone is kept clear on all sides.
slide-tell-exit = Add exit with the two points at the bottom of the chute.
swing-pivot-unknown = The pivot of { $fixture } is not known. It is taken as { $taken } high.
swing-tell-pivot = Measure from the ground to the pivot and add pivot.
swing-seat-unknown = The seat top of { $fixture } is not known. The zone is drawn from the ground, which errs to safety.
swing-tell-seat = Measure from the ground to the top of the seat and add seat_top.
swing-members-unknown = The members of { $fixture } are not known. They are taken as { $taken } long.
swing-tell-members = Measure from the pivot to the tyre and add members.

# Neighbours
zones-overlap = The clear zones of { $first } and { $second } share { $area }.
zones-never-shared = The path of a swing, the exit of a slide and the ground round what turns are never shared.
zones-move-apart = Ask a playground inspector which of them should move.
equipment-too-near = { $first } and { $second } stand { $distance } apart.
equipment-apart = At least { $wanted }: 6 ft if both play surfaces are at most 30 in high, else 9 ft.
zone-obstructed = { $thing } stands in the clear zone of { $fixture }, { $distance } from it.
zone-cut-by-edge = { $edge ->
    [wall] A wall
    [fence] A fence
    [hedge] A hedge
    [kerb] A kerb
    [drop] A drop
   *[other] An edge
} cuts the clear zone of { $fixture }, { $distance } from it.
zone-clear = Nothing else in a clear zone; buildings and other structures at least { $gap } away.
equipment-on-hard-ground = { $fixture } stands on hard ground ({ $surface ->
    [asphalt] asphalt
    [concrete] concrete
    [paving] paving
    [old-paint] old paint
   *[other] sealer
}).
equipment-ask-inspector = Equipment needs ground that softens a fall. Ask a playground inspector before children use it.

# Surfaces
surface-assumed = No surface is told. All of it, { $area }, is taken for sound asphalt.
surface-assumed-rest = No surface is told for { $area }. It is taken for sound asphalt.
surface-tell = Add a surface for each stretch of ground.
surface-unless-maker-agrees = No paint on { $surface ->
    [rubber] rubber
    [mulch] bonded mulch
   *[other] carpet
}, unless its maker agrees in writing: paint may harden it.
surface-with-care = Paving takes paint, with care.
surface-mind-joints = Joints move and show through. Keep lines off them where you can.
surface-test-first = Old paint lies on the ground.
surface-test-lead = Have it tested for lead and chromate first. Do not sand, grind or burn it.
surface-ask-maker = The ground is sealed; acrylic paint may not hold.
surface-try-patch = Ask the sealer's maker and try a small patch.
surface-too-young = The { $surface ->
    [asphalt] asphalt
   *[other] concrete
} is too young to paint: { $left ->
    [one] one more day
   *[other] { $left } more days
}.
surface-cured = At least { $days } days after it was laid.
surface-wait = { $left ->
    [one] Paint tomorrow
   *[other] Paint in { $left } days
} or later, and set date in project.toml to that day.
surface-spalled = Part of the ground is spalled; it is not painted.
surface-repair = Have it mended, then measure again.
surface-cracked = Part of the ground is cracked.
surface-fill-cracks = Fill cracks wider than 10 mm and steps higher than 6 mm, or keep markings off them.
remark-old-paint = There is old paint on the ground.

# Doors and routes
door-no-width = { $door } has no width; it is left out.
door-side-unclear = It is not clear on which side of { $door } the yard lies. Both sides are kept free.
door-put-on-wall = Put both its points on the wall it stands in.
route-end-unknown = There is no door, gate or fixture called { $name }.
route-name-end = Name a door, a gate or a fixture of this yard.
route-width-odd = The route from { $from } to { $to } has no usable width.
route-width-usual = A route in a play area is { $width } wide.
route-none = There is no way from { $from } to { $to }, however narrow. Wanted: { $width }.
route-too-narrow = There is no way from { $from } to { $to } that is { $width } wide. The widest is { $widest }.
route-may-narrow = Such a route may narrow to { $narrow } over a short stretch: ask who knows the local code.
route-clear-way = Move what stands in the way, or ask for another route.
