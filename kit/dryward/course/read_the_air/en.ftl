### Lesson 1: read the air. The two airs are called A and B.

## The page

given = air pressure { $pressure }, as at sea level
air-a-temperature = Air A: temperature
air-a-humidity = Air A: humidity
air-b-temperature = Air B: temperature
air-b-humidity = Air B: humidity
a-vapor-pressure = A: vapor pressure
a-dew-point = A: dew point
a-water = A: water in the air
a-water-in-volume = A: water in each volume
b-water = B: water in the air
b-water-note = dew point { $dew_point }
same-water = Both airs have nearly the same water, { $water }, whatever their RH.
# $more and $less are the letters of the two airs; $lower says whether the one with more water has the lower RH.
more-water = { $lower ->
        [yes] Air { $more } has { $times } times the water of air { $less }, though its RH is lower. Its dew point is { $dew_point }.
       *[no] Air { $more } has { $times } times the water of air { $less }. Its dew point is { $dew_point }.
    }
step-pressure = Vapor pressure of air A.
step-dew-point = Dew point: the temperature at which this is the most vapor there can be.
step-water = { $system ->
        [us] Water for each weight of dry air: 0.622 times the vapor pressure, over the pressure of the dry air alone. 7000 grains are a pound.
       *[si] Water for each weight of dry air: 0.622 times the vapor pressure, over the pressure of the dry air alone. 1000 g are a kg.
    }

## The questions

cooled-why = The vapor pressure stays, and where it is colder there can be less: it is { $then } of the most there can be.
cooled-ask = Air at { $warm } and { $rh } is cooled to { $cool }. Nothing is added or taken out. What is its RH now?
cooled-hint = Set air A on the page to { $warm } and { $rh }, then to { $cool }. Which of its numbers has to be the same before and after?
cooled-rh-alone-reply = It would stay { $rh } only if water left the air. None did, so RH goes up to { $then }.
cooled-dew-point-is-air-temperature-reply = It is at 100 % only from the dew point down, { $dew }. It is not that cold yet.
cooled-dew-point-is-air-temperature-seems = Air that is cooled far enough does end there.
heated-why = No water came or went, so the vapor pressure and the dew point stay: { $dew }.
heated-ask = Air at { $start } and { $rh } is heated to { $rise }. Where is its dew point now?
heated-hint = Which number of air A on the page counts its water? Set { $start } and { $rh }, and read it.
heated-dew-point-is-air-temperature-reply = The dew point counts water, not heat. No water was added.
heated-heating-dries-the-air-reply = RH falls when you heat air. The water, and so the dew point, stays.
brought-in-why = Its dew point stays { $dew }, and at { $warm } that is only about { $then } RH.
brought-in-ask = There is fog outside: { $cold } and { $fog }. This air comes into the house and is heated to { $warm }. How much vapor has it then?
brought-in-hint = Set the fog as air B on the page and read its dew point. What would heat do to that number?
brought-in-right = As little as before: about { $then } RH.
brought-in-winter-fog-is-wet-air = Much. Foggy air is wet air, and it brings that in.
brought-in-winter-fog-is-wet-air-reply = { $fog } of little is little. The dew point of this fog is { $dew }, and at { $warm } that is only about { $then } RH.
brought-in-heating-dries-the-air = Less than before. The heat takes water out of it.
brought-in-heating-dries-the-air-reply = RH falls from { $fog } to about { $then }, but no water goes anywhere: the dew point stays { $dew }.

up-high-why = It is { $most } there as at sea level: only the warmth counts.
up-high-ask = A cabin stands at { $height }, where the air is { $thin } thinner than at sea level. Both rooms are at { $warm }. How high can the vapor pressure get before water shows up?
up-high-hint = Think of the two jars. Which of them was at a higher pressure of air, and what did that change?
up-high-right = As high as at sea level.
up-high-air-is-a-sponge = Less high. Thin air holds less water.
up-high-air-is-a-sponge-reply = In the jar without any air it stood as high as with air. At { $warm } it is { $most }, in thin air too.
up-high-rh-alone = That depends on the RH up there.
up-high-rh-alone-reply = RH says how near the vapor is to the most there can be. That most is { $most } at { $warm }, here and there.

## The picture

key-air = air { $name }
key-dew-point = dew point
axis-temperature = temperature, { $unit }
axis-vapor-pressure = vapor pressure, { $unit }
axis-water = water in the air
axis-of-dry-air = { $unit } of dry air
alt-same-water = Both have the same water.
alt-more-water = Air { $more } has more water than air { $less }.
alt-graph = Graph of vapor pressure over temperature with the saturation curve.
alt-air = Air { $name } at { $temperature } and { $humidity } has a vapor pressure of { $pressure } and a dew point of { $dew_point }.
alt-no-dew-point = none

## The beats

stage-room = Room: { $temperature }, { $humidity }
stage-yard = Yard: { $temperature }, { $humidity }
stage-air = { $temperature }, { $humidity }
stage-before = Before: { $temperature }, { $humidity }
stage-after = Now: { $temperature }, { $humidity }
stage-had = before: { $water }
stage-has = now: { $water }
stage-dial = RH
stage-can = { $sweats ->
        [yes] Can, { $temperature }: sweats
       *[no] Can, { $temperature }: no drops
    }
jar-with-air = { $frozen ->
        [yes] Air and ice
       *[no] Air and water
    }
jar-without-air = { $frozen ->
        [yes] Ice, no air
       *[no] Water, no air
    }
jar-mark = mark
jar-scale = A dot of vapor is { $dot }. The rings are air.
# $air is a weight, $room the room that much air fills.
stage-scale = Each box is { $air } of air, about a room of { $room }. Its jar has all its water. A mark on the jar is { $mark }. A dot is { $dot } of water as vapor.

beat-first-say = Take a small room of each air, { $weight }. All its water goes into a jar. Which gets more?
beat-first-ask = Take a letter in the picture, or choose from the list.
beat-first-answer = The room's air has { $room }, the yard's { $yard }. That is { $times } times as much, at the lower RH.
beat-first-also = Vapor pressure: { $room_pressure } and { $yard_pressure }. Heated to { $warm } the yard's air would be at { $heated }, not { $room_humidity }.

beat-fog-say = Fog both mornings, and { $humidity } both times. How high is the water in each jar?
beat-fog-ask = Bet on both before you see either.
beat-fog-first = January
beat-fog-second = August
beat-fog-january-ask = How much water is in the January fog's jar?
beat-fog-january-high = Near the top. Air at { $humidity } is wet air.
beat-fog-january-high-reply = Fog looks wet. But at { $cold } there can be little vapor, and { $humidity } of little is little: { $january }.
beat-fog-january-half = About half way up.
beat-fog-january-half-reply = Less. At { $cold } there can be little vapor, and { $humidity } of little is little: { $january }.
beat-fog-january-low = Near the bottom.
beat-fog-january-low-reply = At { $cold } there can be little vapor, and { $humidity } of that is { $january }.
beat-fog-august-ask = And in the August fog's jar?
beat-fog-august-high = Near the top.
beat-fog-august-high-reply = At { $warm } there can be much more vapor, and { $humidity } of that is { $august }.
beat-fog-august-half = About half way up.
beat-fog-august-half-reply = More. At { $warm } there can be much more vapor, and { $humidity } of that is { $august }.
beat-fog-august-low = Near the bottom.
beat-fog-august-low-reply = The meter reads as in January. But at { $warm } there can be much more vapor, and { $humidity } of that is { $august }.
beat-fog-answer = January has { $january }, August { $august }: about { $times } times as much at the same RH.
beat-fog-also = January air heated to { $room }: { $heated } RH. August air leaves drops on what is colder than { $dew }.

beat-heat-say = Both meters fell from { $from } to { $to }. Where is the water now?
beat-heat-ask = Bet on both before you see either.
beat-heat-first = An electric heater
beat-heat-second = A dehumidifier
beat-heat-heater-ask = The heater warmed the room to { $warm }. Where is its level now?
beat-heat-heater-same = Where it was.
beat-heat-heater-same-reply = The water had nowhere to go: still { $heated }. RH fell because at { $warm } there can be more vapor.
beat-heat-heater-lower = Lower. Heat takes water out of the air.
beat-heat-heater-lower-reply = The meter fell, but the water had nowhere to go: still { $heated }. RH fell because at { $warm } there can be more vapor.
beat-heat-dehumidifier-ask = The dehumidifier ran, and the room stayed at { $cool }. Where is its level now?
beat-heat-dehumidifier-same = Where it was.
beat-heat-dehumidifier-same-reply = The room is no warmer, so about half the reading is about half the water. The bucket has the rest: { $dried } are left.
beat-heat-dehumidifier-lower = Lower.
beat-heat-dehumidifier-lower-reply = The room is no warmer, so about half the reading is about half the water. The bucket has the rest: { $dried } are left.
beat-heat-answer = The heater left all { $heated } in the air, the dehumidifier { $dried }. So a can at { $can } sweats in the heated room alone.
beat-heat-also = Dew point: { $dew_before } before, { $dew_heated } with the heater, { $dew_dried } with the dehumidifier.

beat-jar-say = A closed jar with some water stands at { $room }. From the second one all air was pumped out.
beat-jar-ask = Bet on both. Then warm them until the pressure has doubled.
beat-jar-first = With air
beat-jar-second = Without air
beat-jar-control = How warm both jars are
beat-jar-with-ask = The mark is the most there can be at { $room }, by the table. With air: how high does the vapor pressure come to stand?
beat-jar-with-none = At nothing. Water must boil first.
beat-jar-with-none-reply = Water gives off vapor long before it boils: { $stood } at { $room }.
beat-jar-with-mark = At the mark.
beat-jar-with-mark-reply = At { $stood } as much vapor goes back into the water as comes out.
beat-jar-with-over = Far over it.
beat-jar-with-over-reply = It stops at { $stood }: as much vapor goes back then as comes out.
beat-jar-without-ask = And in the jar without air, closed and left to stand?
beat-jar-without-none = At nothing. There is no air to hold the vapor.
beat-jar-without-none-reply = Vapor needs no air to be in. The water gives off as much: { $stood }.
beat-jar-without-mark = At the same mark.
beat-jar-without-mark-reply = The same { $stood }. It comes from how warm the water is.
beat-jar-without-over = Far over it. No air is in the way.
beat-jar-without-over-reply = It comes faster with no air in the way. But it stops at the same { $stood }.
beat-jar-answer = { $frozen ->
        [yes] At { $warm } both stand at { $pressure }, over ice too. Warmth sets it, not air.
       *[no] At { $warm } both stand at { $pressure }. Warmth sets it, not air.
    }
beat-jar-also = At { $room } both stood at { $stood }. It is the curve of the full page, with air or without.
