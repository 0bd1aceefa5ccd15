# Páginas para pantallas
screen-skills = Qué hacen los pies
screen-plan = { $name }: qué hacen los pies
screen-skill = Destreza
screen-marking = Marca
screen-who = Quién
screen-form = Forma
screen-lead = Guía
screen-lead-foot = { $foot ->
    [R] pie derecho
    [L] pie izquierdo
   *[none] cualquier pie
 }
screen-lead-hand = { $hand ->
    [R] mano derecha
   *[L] mano izquierda
 }
screen-means = Va
screen-means-of = { $means ->
    [feet] a pie
    [wheels] sobre ruedas
   *[walker] con andador
 }
screen-who-by = { $who }, { $means }
screen-age = Edad, años
screen-age-of = { $years }
screen-well = bien hecho
screen-well-says = Bien hecho.
screen-check = Observe el criterio { $check }.
screen-play = Reproducir
screen-pause = Pausa
screen-half = Media velocidad
screen-back = Atrás
screen-on = Siguiente
screen-back-long = Atrás un apoyo
screen-on-long = Adelante un apoyo
screen-flight = Al vuelo
screen-sound = Sonido
screen-dark = Oscuro
screen-time = Tiempo en la secuencia
screen-stage = Los pies desde arriba
screen-rhythm = Ritmo: una barra es un pie en el suelo; un hueco, un pie en el aire
screen-stage-wheels = Ruedas y manos desde arriba
screen-stage-walker = Andador y pies desde arriba
screen-rhythm-wheels = Ritmo: una barra es una mano que impulsa; un hueco, rodar
screen-rhythm-walker = Ritmo: una barra es el andador o un pie en el suelo; un hueco, su avance
screen-legend-wheels = Línea gruesa: impulso. Línea fina: rodar. Mano llena: derecha. Mano vacía: izquierda.
screen-legend-walker = Arco: el andador. Pie lleno: derecho. Pie vacío: izquierdo.
screen-glide = Al rodar
screen-frame = andador
screen-of-mark = Hacia la marca { $count } de { $most }: { $landing }
screen-start-still = Listo: en reposo
screen-right = derecho
screen-left = izquierdo
screen-air = en el aire
screen-seconds = { $value } s
screen-of = Apoyo { $count } de { $most }: { $landing }
screen-start = Listo: los dos pies apoyados
screen-playing = En marcha: { $feet }
screen-no-flight = Esta secuencia no tiene vuelo.
screen-order = Los pies en orden
screen-height = Pies, recorridos y alturas están a escala; un pie en el aire se dibuja sobre su sombra.
screen-model = Pies de modelo, dibujados a partir de cifras: no se filmó a ningún niño y ningún niño tiene que verse así. Muestre la destreza en suelo llano y seco, con espacio para frenar.
screen-still = Se pide menos movimiento: las huellas van numeradas y nada se mueve. Al reproducir se marcan a tiempo.
screen-figures = De dónde salen las cifras
screen-figure = Cifra
screen-value = Valor
screen-standing = Fundamento
screen-standing-of = { $standing ->
    [published] publicada
    [memory] de memoria
   *[practice] práctica común
 }
screen-metre = 1 m
screen-keys = En la barra de tiempo, las flechas izquierda y derecha van de apoyo en apoyo, F va al vuelo siguiente o a rodar y la barra espaciadora reproduce y detiene.
