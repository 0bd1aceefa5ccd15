# What is told of the programme over weeks: who plays where, what is missed, what a mishap changed.
sessions-skill = { $skill ->
    [jump] jump
    [hop] hop
    [leap] leap
    [gallop] gallop
    [slide] slide
    [skip] skip
   *[other] { $skill }
 }
sessions-needed = { $needs ->
    [jump] jump
    [hop] hop
    [leap] leap
    [gallop] gallop
    [slide] slide
    [skip] skip
   *[other] { $needs }
 }
sessions-no-time = A session has no time for stations: warm-up and cool-down take { $minutes } minutes.
sessions-longer = Plan longer sessions, or more of them.
sessions-nobody-out = Nobody can be out: there is no staff, or the yard is too small for one child.
sessions-more-staff = Look at the members of staff and at the area of the yard.
sessions-outings = The class goes out in { $count } turns: so many children at once is more than staff or yard allow.
sessions-miss-no-time = { sessions-skill }: nothing is planned for { $children }. They cannot be out, or no time is left for stations. Least: { $percent } % of { $count ->
    [one] the
   *[other] a
} target.
sessions-miss-no-station = { sessions-skill }: no station suits { $children } ({ $percent } % of { $count ->
    [one] the
   *[other] a
} target).
sessions-add-figure = Paint or size a figure that serves it, or let these children play its easier form.
sessions-miss-never-opens = { sessions-skill } does not open within these weeks for { $children }: what it needs comes first ({ $percent } % of { $count ->
    [one] the
   *[other] a
} target).
sessions-more-weeks = Plan more weeks, or begin sooner with what the skill needs.
sessions-miss-opens-late = { sessions-skill } opens too late for the whole target of { $children }: with { $percent } % the { $count ->
    [one] child
   *[other] last of them
} has the least.
sessions-miss-stations = { sessions-skill }: even with all their time there { $children } would miss the target before the stations grow stale ({ $percent } % for { $count ->
    [one] the child
   *[other] the last of them
}).
sessions-miss-lost = { sessions-skill }: with the sessions or stations that fell out { $children } would have met the target; now it is { $percent } % for { $count ->
    [one] the child
   *[other] the last of them
}.
sessions-make-up = Hold a session more where a week has room.
sessions-miss-full = { sessions-skill }: the stations that serve it, or the staff's eyes, are full; { $children } { $count ->
    [one] gets
   *[other] get at least
} { $percent } % of the target.
sessions-second-track = A second track, one more figure or one more adult would make room.
sessions-miss-time = { sessions-skill }: the other skills need the minutes more; { $children } { $count ->
    [one] gets
   *[other] get at least
} { $percent } % of the target.
sessions-too-soon = { sessions-skill } comes before { sessions-needed } has been practised: { $children }.
sessions-play-before = Play some of what it needs in the warm-up of the weeks before.
sessions-gap = The plan may be up to { $percent } % below the best that is possible.
sessions-pairs = { $count ->
    [one] Once a child goes
   *[other] { $count } times a child goes
} between the same two stations in two sessions running.
sessions-changed = { $lost ->
    [0] No outing is
    [one] One outing is
   *[other] { $lost } outings are
} lost and { $moved ->
    [0] none
    [one] one
   *[other] { $moved }
} of { $ahead } ahead { $moved ->
    [one] is
   *[other] are
} changed. The targets are met to { $value } of 100, before to { $before }.
sessions-fell-behind = { $children } now get less than half of a target that was met to half before.
