# Lo que la línea de órdenes dice alrededor de las notas.
severity-error = error
severity-warning = aviso
severity-advice = consejo
label-expected = se esperaba
label-mend = remedio
