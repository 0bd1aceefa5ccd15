# Days for painting and hours for play. What teachers read is in plain words.
days-rule-air = air neither too cold nor too warm
days-rule-surface = ground neither too cold nor too hot
days-rule-dew = ground warm enough above the dew point
days-rule-humidity = air dry enough
days-rule-rain = no rain
days-rule-dry-before = no rain for a day before
days-rule-dry-after = no rain for hours after
days-rule-wind = little wind
days-rule-dry-wanted = no rain for half a day after
days-rule-warm-after = warm enough for a day after
days-no-window = No working day of this forecast has room for { $hours ->
    [one] one hour
   *[other] { $hours } hours
} of painting in { $coats ->
    [one] one coat
   *[other] { $coats } coats
}.
days-no-window-why = What stands in the way most often is this rule, broken in { $count ->
    [one] one working hour
   *[other] { $count } working hours
}: { $rule ->
    [days-rule-air] the air is neither too cold nor too warm
    [days-rule-surface] the ground is neither too cold nor too hot
    [days-rule-dew] the ground is warm enough above the dew point
    [days-rule-humidity] the air is dry enough
    [days-rule-rain] it does not rain
    [days-rule-dry-before] it has not rained for a day
    [days-rule-dry-after] no rain is near
   *[other] there is little wind
}.
days-no-window-mend = Do less in one go, or wait for the next forecast.
days-ground-by-air = These windows take the ground to be as warm as the air. At night and in the shade it may be colder.
days-ground-by-air-mend = Read the ground with an infrared thermometer before you open a tin.
days-caution-label = The label of the paint comes first. Where it says more than this page, do what it says.
days-caution-ground = Read the ground on the day. It must be at least { $margin } °C above the dew point, and never above { $hot } °C.
days-caution-damp = After rain, tape a sheet of clear plastic to the ground for two hours. If it shows damp, wait.
days-caution-skin = Ground in the sun burns. Skin hurts from about { $pain } °C and may blister at { $burn } °C. Lay the back of your hand on it for { $seconds } seconds first.
days-caution-closed = Keep children off for at least { $hours } hours, and until an adult has tried every marking, dry and wet.
days-caution-typical = A typical year tells which months are good. It is no forecast.
days-light-green = green
days-light-yellow = yellow
days-light-orange = orange
days-light-red = red
days-do-green = Go out and play.
days-do-yellow = Go out with care. Keep fast turns to { $minutes } minutes.
days-do-orange = Stay in.
days-do-orange-out = Stay in, or go out for no more than { $minutes } calm minutes in the shade, as your local rule allows.
days-do-red = Stay in.
days-do-unknown = Not all is known yet. Find out the missing numbers before you go out.
days-do-heat = It is hot. Use the shade first. Wear hats. Drink every { $soonest } to { $latest } minutes.
days-do-chill = It is cold. Wear hats, gloves and dry coats. Come in when someone is wet or shivers.
days-do-air = The air is not clean. Keep asthma plans and medicine at hand. Watch for coughing.
days-do-uv = The sun is strong. Use the shade first. Wear hats and sunscreen.
days-do-thunder = Thunder or lightning? Go in at once. Stay in until { $minutes } minutes after the last one.
days-do-hand = Lay the back of your hand on the paint for { $seconds } seconds. If it hurts, no one plays there. No bare feet.
days-do-local = The rules of your town, your license and your center come first.
