# What the command line says round the notes.
severity-error = error
severity-warning = warning
severity-advice = advice
label-expected = expected
label-mend = mend
