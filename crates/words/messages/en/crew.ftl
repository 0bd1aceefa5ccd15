# What is told of the painting days, and the names of tasks, steps and reasons.
crew-nobody = Nobody is named to paint.
crew-name-people = Say how many people come.
crew-too-many = { $count } people cannot paint one yard.
crew-no-window = No hours to paint in are given.
crew-name-window = Name for each day from when to when the yard is free and the weather fit.
crew-windows-mixed = The hours of the days overlap, run backwards or are out of order.
crew-order-windows = Give each day once, the earliest first.
crew-window-too-short = { $count ->
    [one] One stretch of hours is
   *[other] { $count } stretches of hours are
} too short: cleaning up alone takes { $minutes } minutes.
crew-stencil-unknown = { $marking } wants a stencil that is not there.
crew-no-quantity = { $marking } has an area or a length that is none.
crew-too-few = Some tasks take { $need } people at once, and { $have ->
    [one] one comes
   *[other] { $have } come
}.
crew-find-more = Find somebody who lends a hand for these.
crew-task-too-long = A task at { $marking } takes { $minutes } minutes and fits into no stretch of hours.
crew-longer-day = Lengthen the day, or divide the marking.
crew-no-plan = The work does not fit into the days, even with all that may be added.
crew-more-days = { $count ->
    [one] One more day like the last is needed
   *[other] { $count } more days like the last are needed
}.
crew-more-hands = More people or another stencil of the kind that is waited for may save it.
crew-children-too-early = Children come back { $hours } h before the paint is dry enough for them.
crew-rope-off = Rope the markings off and post someone until then.
crew-no-ground = Nobody looked whether the way out stays open: the ground or its doors are not known.
crew-name-ground = Walk the yard with the plan in hand before the first stroke, and agree on the way out.
crew-no-way = No way leads from { $marking } to a door.
crew-paint-backwards = Paint it backwards towards ground that can be left, and post someone.
crew-way-closed = While { $marking } is wet the way from { $from } to { $to } is closed.
crew-half-at-a-time = Paint half of it at a time, or lay out another way and sign it. Never close a fire route.
crew-kind-sweep = sweep and wash
crew-kind-prime = prime
crew-kind-set-out = set out
crew-kind-mask = mask
crew-kind-coat = coat
crew-kind-clean = clean up
crew-step-place = place and tape the stencil
crew-step-edge = cut in the edges
crew-step-roll = roll
crew-step-lift = lift and wipe the stencil
crew-step-pull = pull the tape
crew-why-order = comes after
crew-why-drying = until it is dry
crew-why-beside = wet paint beside it
crew-why-people = until people are free
crew-why-tapes = until the tapes are free
crew-why-stencil = until the stencil is free
crew-why-way-out = wet paint closes the way out
