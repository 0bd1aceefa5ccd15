# Rules of a layout
rule-paint-on-ground = All paint lies on ground that may be painted
rule-envelope-on-ground = The ground a marking needs in use is free
rule-envelopes-apart = Markings in use keep clear of one another
rule-run-out-inside = Children can slow down at the end within the marking's own ground
rule-lane-width = The lane is wide enough for a child alone
rule-run-out-wanted = Past the end of a run nothing is in the way
rule-waiting-off-lanes = Who waits stands clear of the lanes
rule-in-sight = Staff see every cell from where they stand
rule-square-to-walls = The marking lies square to the nearest wall
rule-quiet-from-fast = Quiet markings keep away from fast lanes
rule-lane-from-edges = The lane keeps away from walls and fixtures
rule-landing-from-edges = Landings keep away from walls and fixtures
rule-landing-from-drains = Landings keep away from drains and covers
rule-waiting-off-ways-out = Who waits stands clear of doors and gates
rule-lanes-crossed = No lane or walk crosses a lane
rule-contrast = The paint stands out from the ground
rule-wheeled-way = Wheels reach at least one marking
rule-balance = The markings are spread over the yard

# Why a candidate is not in the layout
left-out-refused = The programme refuses it.
left-out-no-gain = It would add nothing for this class.
left-out-same-family = { $name } serves the same group already.
left-out-money = The budget does not reach.
left-out-ground = There is not enough free ground.
left-out-no-place = It has no place among the others.
left-out-outdone = It fits, but the best set found does without it.

# What is locked
layout-locked-over-budget = The locked markings cost { $cost }, more than the budget of { $budget }. They stay, and nothing is added
layout-locked-over-ground = The locked markings need { $area } of ground, more than the { $free } that are free. They stay, and nothing is added
layout-unlock = Unlock one of them in layout.toml
