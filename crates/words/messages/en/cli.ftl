# What the command line says round the notes.
severity-error = error
severity-warning = warning
severity-advice = advice
label-expected = expected
label-mend = mend
check-wrong = { $errors ->
    [one] One thing is wrong.
   *[other] { $errors } things are wrong.
 } { $others ->
    [0] { "" }
    [one] One more is worth a look.
   *[other] { $others } more are worth a look.
 }
check-sound = { $others ->
    [0] All is in order.
    [one] Nothing is wrong; one thing is worth a look.
   *[other] Nothing is wrong; { $others } things are worth a look.
 }
check-setout = { $off ->
    [0] All { $readings } check readings of the set-out hold.
    [one] One of { $readings } check readings of the set-out is off.
   *[other] { $off } of { $readings } check readings of the set-out are off.
 }
checks-csv-head = Copy this file into the project folder, fill in what the check tapes read, and run `chalkyard check`.
checks-no-layout = there are check readings, but no layout that they could be held against
build-panel-left = { $panels } fit on no sheet: cut them from a larger one, or ask for smaller panels
teach-no-game = no game of the house suits what is painted here and this class
teach-write-game = write one of your own (docs/games.md), or size a figure for more of the class
teach-session = { $name }: play, week { $week }, session { $session }
teach-session-told = { $groups ->
    [one] One group at a station first; see weeks.pdf.
   *[other] { $groups } groups at the stations first; see weeks.pdf.
 } Look at the weather and at the ground before you go out.
survey-told-yard = The yard is { $area }, give or take { $doubt }.
survey-told-free = Free to paint: { $area }.
told-written = written: { $file }
told-written-cut = written: out/cut, { $count } files for a cutter
new-told-next = Next: fill in tape.csv and survey.toml, then run `chalkyard check { $dir }`.
progress-bounding = proving how good a plan could be
progress-laying = { $count ->
    [one] laying one marking
   *[other] laying { $count } markings
 }
progress-exchanging = trying other markings, step { $step } of { $of }: { $share } % of the practice wanted
progress-polishing = setting them straight, round { $step } of { $of }
class-no-date = the day that ages are reckoned on is missing
class-add-date = add a date to project.toml, as: date = 2026-09-01
class-empty = there are no children to plan for
class-add-children = add rows to children.csv, or counts to programme.toml: ages = { "{" } 3 = 8, 4 = 10 { "}" }
class-turns = At most { $out } children are out together, for want of staff or ground: the class goes out in { $outings } turns.
plan-no-ground = no ground is free to paint
plan-see-blocked = `chalkyard survey` draws what blocks each part of the yard
plan-stopped = the search was stopped; the last plan stays as it is
plan-move-or-unlock = Move it in layout.toml, or unlock it; `chalkyard audit` judges it again.
plan-nothing = no marking could be placed
plan-least-cost = the cheapest marking that helps this class costs { $cost }: raise the budget to at least that
plan-see-left-out = each marking was left out for a reason of ground, money or gain: try more ground or fewer refusals
plan-no-candidate = no family of markings serves this class and these weights
plan-told-markings = { $count ->
    [one] One marking, { $cost } { $currency } in paint and tape.
   *[other] { $count } markings, { $cost } { $currency } in paint and tape.
 }
plan-told-value = The class gets { $value } % of the practice wanted; no plan could give more than { $bound } % (gap { $gap } %).
plan-told-binds = { $of ->
    [money] { $more } more
    [ground] { $more } more ground
    [time] { $more } minutes more a session (the practice wanted grows with it)
   *[staff] One adult more
 } { $sign ->
    [more] would give { $change } % more.
    [less] would give { $change } % less.
   *[same] would change nothing.
 }
plan-told-left-out = left out: { $name }, { $why ->
    [refused] which the programme refuses
    [no-gain] which would add nothing
    [same-family] whose family serves that group already
    [money] for want of money
    [ground] for want of ground
    [no-place] which has nowhere to lie among the others
   *[outdone] which the others do better without
 }
plan-told-letters = { $name }: { $jumpable } of { $words } words can be jumped; the longest jump is { $longest }.
plan-told-letters-not = not to be jumped there: { $words }
plan-told-gone = gone since the last plan: { $names }
plan-told-come = new since the last plan: { $names }
plan-told-resized = resized since the last plan: { $names }
plan-told-change = change in practice since the last plan: { $change } %
audit-no-layout = there is no layout to judge
audit-plan-first = make one with `chalkyard plan`, or write layout.toml
audit-whole = the whole layout
audit-check = { $hard ->
    [hard] BROKEN
   *[wanted] not met
 }: { $marking }: { $rule }: wanted { $wanted }, is { $actual }{ $unit ->
    [deg] { "" } degrees
    [points] { "" } points
   *[other] { "" }
 }
audit-told = { $checks } checks: { $broken ->
    [0] every hard rule holds
    [one] one hard rule is broken
   *[other] { $broken } hard rules are broken
 }, { $unmet ->
    [0] every wish is met
    [one] one wish is not met
   *[other] { $unmet } wishes are not met
 }.
