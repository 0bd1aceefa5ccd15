# Footfalls in time
motion-foot = { $foot ->
    [R] right
    [L] left
   *[B] both
 }
motion-moment = { $down ->
    [air] In the air
    [R] Right foot down
    [L] Left foot down
   *[B] Both feet down
 }
motion-landing = { $foot ->
    [R] { $role ->
        [closing] right foot closes up
        [hop] right foot lands its hop
        [tap] right foot taps down
        [stand] right foot comes to rest
       *[contact] right foot lands
     }
    [L] { $role ->
        [closing] left foot closes up
        [hop] left foot lands its hop
        [tap] left foot taps down
        [stand] left foot comes to rest
       *[contact] left foot lands
     }
   *[B] both feet land together
 }{ $flown ->
    [yes] , out of the air
   *[no] { "" }
 }
motion-form = { $name ->
    [one-after-the-other] feet one after the other
    [steps-over] steps over
    [taps] free foot taps
    [changes-foot] changes foot
    [big-step] big step, no flight
    [stops-first] stops first
    [lead-changes] lead changes
    [passes] back foot passes
    [even-beat] even beat
    [crosses] feet cross
    [turns] toes turn
    [drags] feet drag
    [one-sided] one-sided
    [pauses] pauses
    [shuffles] no float
    [wide] feet wide
   *[other] { $name }
 }
motion-early-jump-one-after-the-other = The feet land one after the other.
motion-early-jump-steps-over = One foot steps over; the other follows.
motion-early-hop-taps = The free foot taps down.
motion-early-hop-changes-foot = After two hops the other foot takes over.
motion-early-leap-big-step = A big step: one foot is always down.
motion-early-leap-stops-first = The child stops before the flight.
motion-early-gallop-lead-changes = The leading foot changes.
motion-early-gallop-passes = The back foot passes the front foot.
motion-early-gallop-even-beat = An even beat, as in a run.
motion-early-slide-crosses = The feet cross.
motion-early-slide-turns = The toes turn toward the way.
motion-early-slide-drags = The feet drag: no spring between steps.
motion-early-skip-one-sided = One foot hops, the other only steps.
motion-early-skip-pauses = A pause before each step.
motion-early-run-shuffles = No float: one foot is always down.
motion-early-run-wide = The feet land wide of the line.
