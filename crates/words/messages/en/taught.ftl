# Papers for teachers: cards, the weeks, the pocket list, the weather of the day.
page-kind-cards = game cards
page-kind-weeks = the weeks of play
card-how = How to play
card-easier = Easier
card-harder = Harder
card-link = Indoors
card-need = You need
card-children = Children
card-things = { $count ->
    [0] the figure, dry ground
   *[other] { $things }, dry ground
 }
card-group = { $least } to { $most }, of { $from } to { $to } years
card-years = { $age } years
card-legend = Of all children of an age: solid well pitched, dotted too easy, hatched out of reach; bracket: 90 % interval.
weeks-title = { $name }: the weeks of play
weeks-told = { $weeks ->
    [one] One week
   *[other] { $weeks } weeks
 }{ $known ->
    [yes] , from { $starts }
   *[no] { "" }
 }. Each session has a warm-up, { $slots ->
    [one] one slot
   *[other] { $slots } slots
 } of { $minutes } minutes at the stations, and a calm end. So the children get { $value } of 100 of the practice that is wanted for them. No other plan with these slots is more than { $gap } % better.
weeks-how-warm = Warm up on one figure, all together. Show the day’s move once.
weeks-how-show = Show, then tell. One cue, used twice. Say what went well.
weeks-how-free = A child who is in no group of a slot plays freely in sight. A child who does not want to may watch: that is an answer too.
weeks-how-lost = A session is rained out: write its week and number into lost.csv and run the plan again. The weeks ahead change; what was held stays.
weeks-how-broken = A station is broken, or a child is hurt there: close it, send its group to the free play, and write it into lost.csv.
weeks-how-short = One adult is missing: play one station less, the one that this adult had to watch.
weeks-care-ground = Look at the ground first. No play on wet, icy or hot paint.
weeks-care-sight = Stand where you see all. A fast lane needs an adult at its end.
weeks-care-heat = Water, shade and hats in heat. Go in for thunder, smoke and bitter cold. Local rules come first.
weeks-waiting = How long they wait
weeks-waiting-how = Seconds before a turn, from { $runs } plays of the whole plan, with tries that fail and children who dawdle.
weeks-column-mean = mean
weeks-column-longest = longest
weeks-week = Week { $week }
weeks-turn = { $session }, turn { $turn }
weeks-lost = not held
weeks-column-session = session
weeks-column-slot = slot
weeks-forms = Who plays which form
weeks-forms-how = Who is in no list plays the game as it is. Change the form as soon as you see that it does not fit.
weeks-column-wheels = on wheels
weeks-gets = What each child gets
weeks-gets-how = Per cent of the practice wanted over all weeks, by skill. Contacts and minutes on the move are from the simulated sessions, with what they differ by from one to the next.
weeks-column-child = child
weeks-column-contacts = good contacts
weeks-column-active = minutes active
weeks-missed = What is missed, and why
weeks-why = { $skill }: { $who }: { $why }
weeks-why-no-time = no time is left for stations
weeks-why-no-station = no figure here suits them yet; play the easier form in the warm-up
weeks-why-never-opens = what comes before is not there within these weeks
weeks-why-opens-late = it opens late, after what it needs
weeks-why-stations = the figures would grow stale first
weeks-why-lost = sessions fell out
weeks-why-full = the stations are full
weeks-why-time = other skills need the minutes more
pocket-title = Cues for the pocket
pocket-how = Look for one thing. Say one cue. Wait for two tries before you say another.
pocket-everyone = everyone
pocket-see = you see
pocket-say = you say or do
fit-title = Go, shade, or stay in
fit-how = Look before each session. The worst light of the four counts.
fit-year = In a typical year at { $place }, about { $expected } of { $planned } planned sessions fall on an hour that is fit for play. { $known ->
    [yes] { $spare ->
        [0] No spare ones are needed.
        [one] Plan one more to spare.
       *[other] Plan { $spare } more to spare.
    }
   *[no] So few hours are fit that spare ones do not help: choose another hour or season.
 }
fit-column-light = light
fit-column-heat = heat index, °{ $unit }
fit-column-chill = wind chill, °{ $unit }
fit-column-air = air quality
fit-column-uv = UV
fit-column-do = do
fit-under = under { $value }
fit-from = { $low } and more
fit-between = { $low } to { $high }
fit-instead = Indoors instead
fit-instead-tape = Tape a brook or a row of spots on the floor with masking tape. Shoes on, no socks.
fit-instead-small = Play the small form: hop in place, gallop round the table, clap the long and short beat.
fit-instead-link = Do the indoor link of today’s card.
