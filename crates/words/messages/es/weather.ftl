# Lo que se dice de un archivo del tiempo hora por hora.
weather-number = `{ $found }` en { $column } no es un número
weather-number-mend = corríjalo o deje la celda vacía: una celda vacía es un dato desconocido
weather-impossible = { $column } no puede ser { $found }: se toma como desconocido
weather-impossible-mend = mire si la unidad es correcta o si es el código del archivo para un dato que falta
weather-alike = { $count ->
    [one] hay una celda más de { $column } como
   *[other] hay { $count } celdas más de { $column } como
} las anteriores; esta es la última
weather-row-short = esta fila tiene { $found } celdas; hacen falta { $wanted }
weather-row-mend = consiga el archivo otra vez: puede faltar una parte
weather-date = `{ $found }` no es una hora de un día
weather-want-epw-date = año, mes, día y una hora de 1 a 24
weather-want-tmy-date = una fecha como 07/31/1988 (mes, día, año) y una hora de 01:00 a 24:00
weather-want-month-day-hour = un mes, un día y una hora de 1 a 24
weather-want-time = una hora en punto del reloj del patio, como 2026-09-01 09:00, sin zona horaria
weather-not-hourly = `{ $found }` no es una hora en punto
weather-two-clocks = esta tabla tiene `time` y además mes, día u hora
weather-two-clocks-mend = deje `time` para fechas reales; deje `month`, `day` y `hour` para un año típico
weather-epw-header = falta la línea { $line } que cierra el encabezado
weather-header-mend = consiga el archivo otra vez y no cambie nada en sus primeras líneas
weather-no-hours = no se pudo leer ninguna hora
weather-no-hours-mend = dé una fila por cada hora
weather-not-a-year = { $found ->
    [one] este archivo tiene una hora
   *[other] este archivo tiene { $found } horas
}, y eso no es un año
weather-want-year = 8760 horas (8784 con el 29 de febrero)
weather-gap = { $after } no sigue a { $before } una hora después
weather-gap-mend = ponga las horas en orden, cada una una vez; lo que necesita horas que faltan queda sin saberse
weather-missing = { $column } no se conoce en { $count } de { $of } horas; lo que lo necesita queda sin saberse ahí
weather-never-rains = ninguna hora de este año tiene lluvia: quizá no se midió
weather-never-rains-mend = compare con lo que la gente sabe del lugar; si allí llueve, tome la columna de lluvia como desconocida: deje vacías sus celdas
