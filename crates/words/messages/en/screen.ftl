# Pages for screens
screen-skills = What feet do
screen-plan = { $name }: what feet do
screen-skill = Skill
screen-marking = Marking
screen-who = Who
screen-form = Form
screen-lead = Leads
screen-lead-foot = { $foot ->
    [R] right foot
    [L] left foot
   *[none] either foot
 }
screen-lead-hand = { $hand ->
    [R] right hand
   *[L] left hand
 }
screen-means = Goes
screen-means-of = { $means ->
    [feet] on feet
    [wheels] on wheels
   *[walker] with a walker
 }
screen-who-by = { $who }, { $means }
screen-age = Age, years
screen-age-of = { $years }
screen-well = done well
screen-well-says = Done well.
screen-check = Watch for check { $check }.
screen-play = Play
screen-pause = Pause
screen-half = Half speed
screen-back = Back
screen-on = Next
screen-back-long = Back by one contact
screen-on-long = Forward by one contact
screen-flight = To the flight
screen-sound = Sound
screen-dark = Dark
screen-time = Time in the clip
screen-stage = Feet from above
screen-rhythm = Rhythm: a bar is a foot on the ground, a gap is a foot in the air
screen-stage-wheels = Wheels and hands from above
screen-stage-walker = Walker and feet from above
screen-rhythm-wheels = Rhythm: a bar is a hand that pushes, a gap is a glide
screen-rhythm-walker = Rhythm: a bar is the frame or a foot on the ground, a gap is its way ahead
screen-legend-wheels = Thick line: pushed. Thin line: rolled. Solid hand: right. Open hand: left.
screen-legend-walker = Bow: the frame. Solid foot: right. Open foot: left.
screen-glide = To the glide
screen-frame = frame
screen-of-mark = To mark { $count } of { $most }: { $landing }
screen-start-still = Ready: standing still
screen-right = right
screen-left = left
screen-air = in the air
screen-seconds = { $value } s
screen-of = Contact { $count } of { $most }: { $landing }
screen-start = Ready: both feet down
screen-playing = Playing: { $feet }
screen-no-flight = This clip has no flight.
screen-order = Feet in order
screen-height = Feet, ways and heights are true to scale; a foot in the air is drawn above its shadow.
screen-model = Model feet, drawn from figures: no child was filmed, and no child must look like this. Show a skill on level, dry ground with room to run out.
screen-still = Less motion is asked for: the prints are numbered and nothing moves. Play marks them in time.
screen-figures = Where the figures come from
screen-figure = Figure
screen-value = Value
screen-standing = Standing
screen-standing-of = { $standing ->
    [published] published
    [memory] from memory
   *[practice] common practice
 }
screen-metre = 1 m
screen-keys = On the time bar, left and right arrows go by contact, F goes to the next flight or glide, the space bar plays and pauses.
