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
    [push-R] Right hand pushes
    [push-L] Left hand pushes
    [push-B] Both hands push
    [glide] Rolling
    [wait] Rolling on, waiting
    [still] Standing still
    [frame] Frame moves ahead
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
motion-ride = { $role ->
    [push] { $hands ->
        [R] right hand
        [L] left hand
       *[B] push
     }
    [short] { $hands ->
        [R] right hand, short
        [L] left hand, short
       *[B] short push
     }
    [glide] glide
    [wait] wait
    [frame] frame
   *[still] stop
 }
motion-rides = { $role ->
    [push] { $hands ->
        [R] right hand pushes
        [L] left hand pushes
       *[B] both hands push
     }
    [short] { $hands ->
        [R] right hand pushes, short
        [L] left hand pushes, short
       *[B] both hands push, short
     }
    [glide] the hands let go, the wheels roll
    [wait] the wheels roll on, the hands wait
    [frame] the frame is set ahead
   *[still] stands still on the mark
 }
motion-adapted = { $means ->
    [walker] { $skill ->
        [jump] Frame, step, step, twice; then stand still on the mark.
        [hop] The same foot steps first each time.
        [leap] Quick across: frame, step, step.
        [gallop] A long way of the frame, then a short one.
        [slide] Along the line: frame, step, step.
        [skip] Frame, step, step, wait.
        [run] Quick: frame, step, step.
       *[walk] At ease: frame, step, step.
     }
   *[wheels] { $skill ->
        [jump] Two pushes, coast to the mark, stop still.
        [hop] One hand pushes, the same side again; the other steers.
        [leap] A fast push across.
        [gallop] A long push, a short push.
        [slide] Push along the line.
        [skip] Push, wait, push.
        [run] Quick pushes.
       *[walk] Pushes at ease.
     }
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
    [two-on-one] two feet on a square for one
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
motion-early-court-taps = The free foot taps down on the square for one.
motion-early-court-one-after-the-other = The feet land on the pair one after the other.
motion-early-court-two-on-one = Both feet land on the square for one.
