# Lo que la línea de órdenes dice alrededor de las notas.
severity-error = error
severity-warning = aviso
severity-advice = consejo
label-expected = se esperaba
label-mend = remedio
check-wrong = { $errors ->
    [one] Hay una cosa mal.
   *[other] Hay { $errors } cosas mal.
 } { $others ->
    [0] { "" }
    [one] Otra merece una mirada.
   *[other] Otras { $others } merecen una mirada.
 }
check-sound = { $others ->
    [0] Todo está en orden.
    [one] Nada está mal; una cosa merece una mirada.
   *[other] Nada está mal; { $others } cosas merecen una mirada.
 }
survey-told-yard = El patio mide { $area }, con un margen de { $doubt }.
survey-told-free = Libre para pintar: { $area }.
told-written = escrito: { $file }
