# Lo que se dice del replanteo y de sus lecturas de control. Los puntos clave llevan el nombre de su marca y un número.
setout-loose-left-out = Ninguna cinta se engancha en { $points }: la medición no { $count ->
    [one] lo
   *[other] los
} sujeta.
setout-tape-them-again = No se pierde nada mientras sirvan otros puntos. Más lecturas hasta { $count ->
    [one] él
   *[other] ellos
} ayudarían.
setout-unreached = { $marking }: { $count ->
    [one] un punto clave queda
   *[other] { $count } puntos clave quedan
} fuera del alcance de dos cintas que se crucen bien.{ $found ->
    [0] { " " }La marca no se puede replantear.
   *[other] { "" }
}
setout-two-bases = Dos puntos medidos con paso libre hasta él, vistos bajo un ángulo entre { $least } y { $most } grados.
setout-survey-another = Mida un punto más que vea bien la marca: una esquina, un poste, un clavo en una junta.
setout-no-third = Ninguna tercera cinta llega a { $points }.
setout-measure-between = En su lugar, mida entre los puntos clave de la marca antes de pintar.
setout-flat-crossing = Las cintas se cruzan en un ángulo muy abierto o cerrado en { $points }.
setout-take-care = Tense allí bien las dos cintas, a ras de suelo, y fíese de la cinta de control.
setout-name-unknown = { $name } no es ni un punto clave del replanteo ni un punto medido que esté sujeto.
setout-name-as-printed = Escriba el nombre como figura en la hoja.
setout-to-itself = Una lectura de { $name } a sí mismo.
setout-name-other-end = Indique el punto hasta el que se midió de verdad.
setout-reading-impossible = { $points } no puede medir { $reads }.
setout-measure-again = Mida de nuevo.
setout-base-doubtful = { $base } se ha movido, o se tomó otro punto por él{ $count ->
    [0] { "" }
   *[other] : { $points } { $count ->
        [one] depende
       *[other] dependen
    } de él
}.
setout-look-at-base = Busque { $base } otra vez y mídalo hasta dos puntos medidos. Si se ha movido, replantee desde otros puntos.
setout-redo = { $point } está mal puesto: una cinta de control hasta él se desvía { $off }.
setout-hold-again = Replantéelo: { $first } desde { $a }, { $second } desde { $b }. Luego repita los controles.
setout-reading-off = De { $point } a { $other } se lee { $reads }. Debería leerse { $should }, con un margen de { $limit }.
setout-again-then-redo = Mídalo otra vez. Si sale lo mismo, replantee { $point }.
setout-wrong-side = Encajaría si las cintas se cruzaron al otro lado de la línea de { $a } a { $b }.
setout-swapped = Encajaría si cada longitud se llevó a la otra base, { $a } por { $b }.
setout-held-wrong = Encajaría si la cinta desde { $base } se sostuvo en { $at }, no en { $wanted }.
setout-unchecked = { $count ->
    [one] { $points } no tiene
   *[other] { $points } no tienen
} lectura de control.
setout-measure-third = Mida la tercera cinta antes de pintar.
