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
step-dew-point = Dew point: the temperature at which so much fills the air.
step-water = { $system ->
        [us] Water for each weight of dry air: 0.622 times the vapor pressure, over the pressure of the dry air alone. 7000 grains are a pound.
       *[si] Water for each weight of dry air: 0.622 times the vapor pressure, over the pressure of the dry air alone. 1000 g are a kg.
    }

## The questions

cooled-why = The vapor pressure stays, and colder air is fuller with it: { $then }.
cooled-ask = Air at { $warm } and { $rh } is cooled to { $cool }. Nothing is added or taken out. What is its RH now?
cooled-hint = Set air A on the page to { $warm } and { $rh }, then to { $cool }. Which of its numbers has to be the same before and after?
cooled-rh-alone-reply = It would stay { $rh } only if water left the air. None did, so RH goes up to { $then }.
cooled-air-is-a-sponge-reply = Full air comes at the dew point, { $dew }. It is not that cold yet.
cooled-air-is-a-sponge-seems = Air that is cooled far enough does end there.
heated-why = No water came or went, so the vapor pressure and the dew point stay: { $dew }.
heated-ask = Air at { $start } and { $rh } is heated to { $rise }. Where is its dew point now?
heated-hint = Which number of air A on the page counts its water? Set { $start } and { $rh }, and read it.
heated-dew-point-is-air-temperature-reply = The dew point counts water, not heat. No water was added.
heated-heating-dries-the-air-reply = RH falls when you heat air. The water, and so the dew point, stays.
wet-things-why = The dew point of this room is { $dew }. Only what is colder than that gets wet.
wet-things-ask = The room is { $warm } and { $rh }. The window glass is { $glass }, a water pipe is { $pipe }. What gets wet?
wet-things-hint = Set air A on the page to { $warm } and { $rh } and read its dew point. Hold the glass and the pipe against it.
wet-things-right = Only the pipe.
wet-things-treats-the-sign = Only the glass.
wet-things-treats-the-sign-reply = The glass is { $glass }, above the dew point of this room, { $dew }. It stays dry. The pipe, { $pipe }, is below it.
wet-things-dew-point-is-air-temperature = Both. They are colder than the room.
wet-things-dew-point-is-air-temperature-reply = Colder than the room is not yet wet. The dew point is { $dew }: the pipe, { $pipe }, is below it, and the glass, { $glass }, is not.
wet-things-dew-point-is-air-temperature-seems = What sweats is always cold.
wet-things-rh-alone = Neither. { $rh } is far from full.
wet-things-rh-alone-reply = At { $warm } it is far from full, yes. At the pipe the same air is cooled to { $pipe }, and from { $dew } down it is full.

## The picture

key-air = air { $name }
key-dew-point = dew point
axis-temperature = temperature, { $unit }
axis-vapor-pressure = vapor pressure, { $unit }
axis-water = water in the air
axis-of-dry-air = { $unit } of dry air
alt-same-water = Both hold the same water.
alt-more-water = Air { $more } holds more water than air { $less }.
alt-graph = Graph of vapor pressure over temperature with the saturation curve.
alt-air = Air { $name } at { $temperature } and { $humidity } has a vapor pressure of { $pressure } and a dew point of { $dew_point }.
alt-no-dew-point = none
