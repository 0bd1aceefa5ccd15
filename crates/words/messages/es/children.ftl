# La sala de los niños: lo que puede estar mal en una lista o en un ajuste.
child-age-outside = { $child } tendría { $years } años en la fecha del proyecto.
child-born-later = { $child } nacería después de la fecha del proyecto.
child-age-expected = Las cifras valen para niños de { $least } a { $most } años. Revise el mes de nacimiento y la fecha del proyecto.
child-measure-impossible = { $column } de { $child } dice { $value }, y ningún niño de esta edad mide eso.
child-measure-far = { $column } de { $child } dice { $value }, lejos de lo que se espera a esta edad.
child-measure-expected = A esta edad lo usual es cerca de { $about }.
child-measure-again = Mida otra vez; si es correcto, déjelo. Si no, mire la unidad y la coma decimal.
child-measured-on-feet = { $child } se desplaza de otro modo, así que sus distancias de salto y de pata coja no se usan.
child-own-means = { $count ->
    [one] Un niño se desplaza a su manera: { $children }. Su alcance es una estimación de la práctica común.
   *[other] { $count } niños se desplazan a su manera: { $children }. Su alcance es una estimación de la práctica común.
}
child-own-means-mend = Mida cuánto avanza con un impulso cómodo o un paso con ayuda, y escríbalo en overrides.toml.
child-right-less-used = { $child } salta claramente menos con el pie derecho, así que el derecho cuenta como su lado menos usado.
child-left-less-used = { $child } salta claramente menos con el pie izquierdo, así que el izquierdo cuenta como su lado menos usado.
child-unknown = Ningún niño se llama { $child }.
child-unknown-expected = Se conocen estos: { $children }.
child-figure-outside = { $child } no puede tener { $value } en { $figure }.
child-probability-expected = Una probabilidad va de 0 a 1.
child-figure-expected = Una longitud o una velocidad es mayor que 0 y a lo más 10; una dispersión puede ser 0.
