# What is told of a file of hourly weather.
weather-number = `{ $found }` under { $column } is no number
weather-number-mend = correct it, or leave the cell empty: an empty cell is unknown
weather-impossible = { $column } cannot be { $found }: it is taken as unknown
weather-impossible-mend = look whether the unit is right, or whether this is the file's code for a missing value
weather-alike = { $count ->
    [one] one more cell of { $column } is
   *[other] { $count } more cells of { $column } are
} like the ones above; this is the last
weather-row-short = this row has { $found } cells; { $wanted } are needed
weather-row-mend = get the file again: part of it may be lost
weather-date = `{ $found }` is no hour of a day
weather-want-epw-date = year, month, day and an hour from 1 to 24
weather-want-tmy-date = a date as 07/31/1988 and an hour from 01:00 to 24:00
weather-want-month-day-hour = a month, a day and an hour from 1 to 24
weather-want-time = a full hour on the yard's own clock, as 2026-09-01 09:00, without a time zone
weather-not-hourly = `{ $found }` is not a full hour
weather-two-clocks = this table has a time, and a month, day or hour besides
weather-two-clocks-mend = keep `time` for real dates; keep `month`, `day` and `hour` for a typical year
weather-epw-header = the line { $line } that ends the header is missing
weather-header-mend = get the file again, and change nothing in its first lines
weather-no-hours = no hour of weather could be read
weather-no-hours-mend = give a row for each hour
weather-not-a-year = { $found ->
    [one] this file has one hour
   *[other] this file has { $found } hours
}, which is not a year
weather-want-year = 8760 hours (8784 with 29 February)
weather-gap = { $after } does not follow { $before } by one hour
weather-gap-mend = put the hours in order, each once; what needs hours that are lacking stays unknown
weather-missing = { $column } is not known in { $count } of { $of } hours; what needs it stays unknown there
weather-never-rains = no hour of this year has rain: it may not have been measured
weather-never-rains-mend = compare with what people know of the place; if it does rain there, take the rain column as unknown: leave its cells empty
