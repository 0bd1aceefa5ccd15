# La sala de las figuras propias: lo que un dibujo dice y lo que no puede decir.
drawn-not-xml = El dibujo se corta aquí, o no es un SVG.
drawn-not-xml-mend = Guárdalo de nuevo como SVG simple desde el programa de dibujo.
drawn-not-svg = El archivo contiene { $found }, no un dibujo SVG.
drawn-not-svg-mend = Guarda el dibujo como SVG simple.
drawn-too-much = El dibujo es demasiado grande: se leen como mucho { $most } elementos.
drawn-too-much-mend = Quita lo que no se pinta y une los trazados que van juntos.
drawn-nothing = En el dibujo no hay nada que pisar ni que recorrer.
drawn-nothing-mend = Da a una forma un nombre que empiece por cell- o lane-, como cell-1-start.
drawn-scale = La escala { $text } no se puede leer.
drawn-scale-expected = Escríbela como 1:10.
drawn-saying = { $name } no puede ser { $value }.
drawn-saying-facing = Es un ángulo en grados, contra el reloj desde la derecha.
drawn-saying-order = Es numbers o free.
drawn-saying-mirror = Es yes o no.
drawn-saying-tracks = Es un número de 1 a 12.
drawn-gait = No hay ningún modo de andar llamado { $word }.
drawn-gait-expected = Los modos son { $gaits }.
drawn-pixels = El dibujo se mide en píxeles: en el suelo tiene { $width } por { $height }.
drawn-pixels-mend = Pon el ancho del documento en { $units } mm si una unidad debe ser un milímetro.
drawn-size = La figura mide { $width } por { $height } en el suelo.
drawn-size-mend = Dibuja en milímetros, a tamaño real: un punto para un pie mide de 330 a 400 mm. Un dibujo pequeño puede decir su escala: data-scale="1:10".
drawn-value-odd = { $name } no puede ser { $value }; se pasa por alto.
drawn-value-odd-mend = Guarda el dibujo de nuevo o corrige el valor.
drawn-path-broken = El trazado no se puede leer hasta el final; lo que sigue se omite.
drawn-path-broken-mend = Dibuja de nuevo el trazado o borra lo que sigue al error.
drawn-link-lost = Lo que esta copia muestra no está en el dibujo.
drawn-link-lost-mend = Convierte la copia en una forma propia.
drawn-text = { $count ->
    [one] Se omite un texto
   *[other] Se omiten { $count } textos
}: las letras dependen de las fuentes de cada ordenador.
drawn-text-mend = Convierte las letras en contornos («objeto a trazado» o «crear contornos») y guarda de nuevo.
drawn-image = { $count ->
    [one] Se omite una imagen
   *[other] Se omiten { $count } imágenes
}: una imagen no se puede cortar como plantilla.
drawn-image-mend = Traza como formas lo que se vaya a pintar.
drawn-gradient = { $count ->
    [one] Un degradado o motivo se toma
   *[other] { $count } degradados o motivos se toman
} por su primer color.
drawn-gradient-mend = Da a cada forma un solo color liso.
drawn-effect = { $count ->
    [one] Se pasa por alto un filtro, máscara o punta de flecha.
   *[other] Se pasan por alto { $count } filtros, máscaras o puntas de flecha.
}
drawn-effect-mend = Dibuja el borde mismo, como forma.
drawn-hidden = { $count ->
    [one] Una forma con nombre está oculta y se omite.
   *[other] { $count } formas con nombre están ocultas y se omiten.
}
drawn-hidden-mend = Muestra la capa antes de guardar, o bórrala.
drawn-far = { $count ->
    [one] Una forma está
   *[other] { $count } formas están
} demasiado lejos para ser intencionada.
drawn-far-mend = Borra las formas sueltas o llévalas a la página.
drawn-word = La palabra { $word } de este nombre no significa nada.
drawn-word-expected = Tras el nombre puede ir { $words }.
drawn-word-near = Quizá quieres decir { $near }.
drawn-word-mend = Quítala, o escríbela junto al nombre.
drawn-nameless = Esta forma tiene clase y no tiene nombre.
drawn-nameless-mend = Numérala, como cell-1.
drawn-twice = Dos celdas se llaman { $cell }.
drawn-twice-mend = Da a cada una su número; dos de un mismo paso son 3a y 3b.
drawn-next-unknown = Tras la celda { $cell } debe venir { $next }, y ninguna celda se llama así.
drawn-next-expected = Las celdas son { $names }.
drawn-cell-flat = La celda { $cell } no encierra suelo.
drawn-cell-flat-mend = Dibuja el lugar donde cae el pie como una forma cerrada.
drawn-cell-pieces = La celda { $cell } está en varios trozos; se toma el mayor.
drawn-cell-pieces-mend = Dibuja una sola forma cerrada para cada celda.
drawn-lane-width = La calle { $lane } no tiene ancho.
drawn-lane-width-mend = Dibuja el eje del camino como línea y haz su trazo tan ancho como el camino.
drawn-lane-flat = La calle { $lane } no tiene largo.
drawn-lane-flat-mend = Dibuja el eje del camino como línea, de donde se empieza a donde se para.
drawn-lane-broken = La calle { $lane } está en varias partes; se toma la primera.
drawn-lane-broken-mend = Une las partes o nombra cada una como calle propia.
drawn-no-start = Ninguna celda es salida: se toma la celda { $cell }.
drawn-no-start-mend = Llámala cell-{ $cell }-start, o a otra.
drawn-no-wait = Nadie sabe dónde esperar.
drawn-no-wait-mend = Dibuja dos o tres puntos fuera del camino y llámalos wait-1, wait-2, wait-3.
drawn-unreached = Ningún camino lleva a { $cells }.
drawn-unreached-mend = Numera las celdas en el orden del camino, o nombra las siguientes: data-next="4 5".
drawn-dead-end = Desde { $cells } ningún camino lleva a un final.
drawn-dead-end-mend = Da a la última celda la palabra end.
drawn-spot-small = La celda { $cell } mide { $across } de ancho: demasiado pequeña para un pie.
drawn-spot-expected = Un punto mide al menos { $least }.
drawn-spot-mend = Dibújala mayor; los puntos de esta casa miden de 33 a 40 cm.
drawn-spot-both = La celda { $cell } es para los dos pies y mide { $across } en su lado más largo.
drawn-spot-both-expected = Dos pies piden al menos { $least }.
drawn-gap = De { $from } a { $to } hay { $far }: nadie lo salva.
drawn-gap-expected = Como mucho { $most } de centro a centro.
drawn-gap-mend = Acerca las celdas, o pon una entre ellas.
drawn-overlap = Las celdas { $from } y { $to } se pisan: no hay nada que salvar.
drawn-overlap-mend = Deja suelo libre entre celdas que se siguen.
drawn-bend = La calle { $lane } gira con un radio de { $radius }.
drawn-bend-expected = Una curva que se corre tiene al menos { $least }.
drawn-corner = La calle { $lane } tiene una esquina.
drawn-corner-mend = Redondéala con un radio de { $least } o más.
drawn-corridor = La calle { $lane } mide { $width } de ancho.
drawn-corridor-expected = Ruedas y andadores piden { $least }.
drawn-colour-far = { $colour } no es ninguna de las pinturas; { $paint } es la más cercana, a { $off } de distancia.
drawn-colour-expected = Las pinturas son { $paints }.
drawn-colour-mend = Elige una de ellas, o di cuál es: class="{ $paint }".
drawn-colour-unseen = { $paint } no destaca sobre este suelo.
drawn-colour-unseen-mend = Aquí destacan { $paints }.
drawn-bare = { $colour } es el gris del suelo: se deja sin pintar, y también lo que hay debajo.
drawn-bare-mend = Dale el color de una pintura si se ha de pintar.
drawn-slivers = { $count ->
    [one] Un trozo de pintura tiene
   *[other] { $count } trozos de pintura tienen
} menos de un milímetro de ancho y se { $count ->
    [one] omite
   *[other] omiten
}.
drawn-slivers-mend = Las formas que se tocan deben compartir el borde.
drawn-narrow = { $count ->
    [one] Una forma es
   *[other] { $count } formas son
} en parte demasiado { $count ->
    [one] estrecha
   *[other] estrechas
} para una plantilla.
drawn-narrow-expected = La pintura tiene al menos { $least } de ancho en todas partes.
drawn-narrow-mend = Ensancha el trazo o quita la línea.
drawn-web = Entre pinturas hay { $count ->
    [one] una franja
   *[other] { $count } franjas
} de suelo de menos de { $least }: ahí no aguanta ninguna plantilla.
drawn-web-mend = Separa las formas, o deja que se toquen.
drawn-unpainted = No hay nada pintado en { $cells }.
drawn-unpainted-mend = La forma con nombre muestra dónde cae el pie y no se pinta; añade la clase paint si se ha de pintar.
length-flight = de centro a centro de dos celdas que se siguen
length-lane = largo del recorrido
