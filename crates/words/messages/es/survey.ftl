# Lo que dice la medición. Las lecturas se nombran por sus puntos; las longitudes, en la unidad del usuario.
survey-point-unknown = Aquí se usa un punto que la medición no tiene.
survey-line-of-one-point = La línea del sistema empieza y termina en { $point }.
survey-name-two-points = Indique dos puntos distintos como origin y towards.
survey-start-not-a-number = Una posición aproximada en start no es un número.
survey-no-readings = No hay lecturas de cinta con que trabajar.
survey-tape-some-lengths = Mida los lados del patio y algunas diagonales.
survey-reading-to-itself = Una lectura de un punto a sí mismo: { $points }.
survey-name-other-point = Indique el punto hasta el que se midió de verdad.
survey-sigma-impossible = La desviación típica de { $points } no puede ser correcta.
survey-sigma-positive = Una desviación típica es mayor que cero.
survey-reading-impossible = { $points } no puede medir { $reads }.
survey-angle-between = Un ángulo entre 0 y 180 grados, sin incluirlos.
survey-length-between = Una longitud mayor que cero y no mayor que { $most }.
survey-tape-again = Mida de nuevo.
survey-known-too-few = Las coordenadas conocidas de un solo punto no fijan el sistema; no se han usado.
survey-known-two = Dos puntos por lo menos, cada uno con x e y.
survey-known-add-or-strike = Añada un segundo punto conocido o borre este.
survey-line-loose = Las lecturas no sujetan la línea { $line } al resto del patio.
survey-line-used = El sistema se apoya en { $line }.
survey-line-tape-or-choose = Mida desde los dos extremos de la línea a dos puntos más, o elija otra línea.
survey-not-joined = Ninguna lectura une estos puntos con el resto del patio: { $points }.
survey-join-by-three = Mida al menos tres longitudes desde ellos al resto, desde puntos distintos.
survey-point-loose = { $point } está suelto: las lecturas no dicen dónde está.
survey-tape-next = Lo mejor que se puede medir ahora: { $line }.
survey-tape-to-two-more = Mídalo a dos puntos más, o diga en qué muro está.
survey-points-weak = { $count ->
    [one] { $points } está mal sujeto: puede errar { $axis } o más.
   *[other] { $points } están mal sujetos: pueden errar { $axis } o más.
 }
survey-points-weak-and = { $points } y { $others } puntos más están mal sujetos: pueden errar { $axis } o más.
survey-tape-across = Mida hasta un punto así desde otro que lo vea de lado.
survey-side-assumed = { $points } podría estar a cualquier lado de { $line }. Tomamos el lado de dentro del patio.
survey-two-places = { $points } podría estar a cualquier lado de { $line }. El dibujo muestra una suposición.
survey-tape-from-elsewhere = Mida una longitud más, desde un punto fuera de esa línea.
survey-reading-doubtful = { $points } mide { $reads }; las demás dicen { $should }. Se ha apartado.
survey-readings-doubtful = Una de estas lecturas está mal y las lecturas no pueden decir cuál: { $lines }.
survey-tape-one-more = Mida una longitud más entre otros puntos, o repita estas.
survey-longer-than-round = { $points } mide { $reads }, pero el rodeo por { $via } es solo { $round }.
survey-readings-disagree = Las lecturas discrepan { $times } veces lo que prometen. Les pasa a menos de { $alpha } de cada 100 mediciones buenas.
survey-check-sigma-or-tape = Revise la sigma de la cinta y repita las longitudes dudosas.
survey-unchecked = { $count ->
    [one] Casi ninguna otra lectura comprueba una de ellas; un fallo ahí no se vería: { $lines }{ $more ->
        [0] { "" }
       *[other] { " " }y { $more } más
    }.
   *[other] Casi ninguna otra lectura comprueba { $count } de ellas; un fallo ahí no se vería: { $lines }{ $more ->
        [0] { "" }
       *[other] { " " }y { $more } más
    }.
}
survey-boundary-short = { $count ->
    [0] No hay contorno, así que no hay superficie.
    [one] El contorno tiene una esquina, así que no hay superficie.
   *[other] El contorno tiene { $count } esquinas, así que no hay superficie.
}
survey-boundary-three = Nombre al menos tres esquinas, en el orden en que se pasa por ellas.
survey-boundary-crosses = El contorno se cruza: { $first } y { $second } se tocan.
survey-boundary-order = Revise el orden de las esquinas y las lecturas cercanas a esos lados.
survey-walked-other-way = Las lecturas dicen que el contorno gira al revés de lo escrito.
survey-check-walked = Revise walked y el orden de las esquinas.
survey-slip-metres = { $count ->
    [1] Probablemente sobra un metro entero.
    [-1] Probablemente falta un metro entero.
   *[other] Probablemente se contaron mal los metros enteros: { $count }.
}
survey-slip-feet = { $count ->
    [1] Probablemente sobra un pie entero.
    [-1] Probablemente falta un pie entero.
   *[other] Probablemente se contaron mal los pies enteros: { $count }.
}
survey-slip-tenths = { $count ->
    [1] Probablemente sobra una décima de metro.
    [-1] Probablemente falta una décima de metro.
   *[other] Probablemente se contaron mal las décimas de metro: { $count }.
}
survey-slip-digits = Probablemente se cambiaron dos cifras; encajaría { $should }.
survey-slip-foot-inch = Probablemente se mezclaron pies y pulgadas; encajaría { $should }.
survey-slip-hook = Probablemente el gancho o la anilla de la cinta ({ $length }) se contó de más o de menos.
