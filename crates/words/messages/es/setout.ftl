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
