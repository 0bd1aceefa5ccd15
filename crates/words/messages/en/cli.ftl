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
survey-told-yard = The yard is { $area }, give or take { $doubt }.
survey-told-free = Free to paint: { $area }.
told-written = written: { $file }
