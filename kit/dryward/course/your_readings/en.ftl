### Lesson your readings.

## The page.

show = Show
show-readings = as logged: T and RH
show-vapor = as vapor pressure
show-model = wood, with the model
offset-temperature = Cavity sensor reads low by
offset-temperature-error = Error of the cavity temperature
offset-humidity = Cavity humidity reads low by
offset-humidity-error = Error of the cavity humidity
clock = Cavity clock is slow by
clock-error = Error of the cavity clock
choose-one = choose one
cause-none = none: it follows outdoors
# What can wet a roof.
cause-rain-leak = rain leak
cause-air-leak = air leak
cause-built-in-water = built-in water
cause-indoor-humidity = indoor humidity
cause-outdoor-air = outdoor air
cause-not-clear = not clear
# The names that a place of the logger has in this lesson.
place-indoors = indoors
place-cavity = cavity
place-outdoors = outdoors
place-logger = the logger
# $places is a list of what is missing.
places-missing = To look for a cause it takes readings indoors, in the cavity and outdoors; missing: { $places }.
no-pairs = No hour has both a temperature and a humidity; look at the columns, units and decimal sign below.
wood-measured = measured, corrected
wood-modeled = modeled
mean-pressure = Cavity, mean vapor pressure
above = At least a tenth over outdoors
above-note = of the hours
lag = Lag behind the room
margin = Least margin to the dew point
bias = Measured less modeled
bias-text = run the model
likeness = { $most ->
    [room] In { $share } of the hours the cavity has at least a tenth more vapor than outdoors, and it moves most like the room.
    [outdoors] In { $share } of the hours the cavity has at least a tenth more vapor than outdoors, and it moves most like outdoors.
   *[sun] In { $share } of the hours the cavity has at least a tenth more vapor than outdoors, and it moves most like the sun on the deck.
}
# One reading of each place, worked by hand.
step-hour = { $place ->
    [cavity] The cavity at { $time }.
    [indoors] Indoors at { $time }.
    [outdoors] Outdoors at { $time }.
   *[logger] The logger at { $time }.
}
step-same-hour = { $place ->
    [outdoors] Outdoors, the same hour.
   *[indoors] Indoors, the same hour.
}
step-compare = Compare: the cavity less outdoors.
file = The file
open = Open
file-upload = or a CSV from this computer
sample = sample: { $name }
frost-hint = In frost a humidity sensor shows RH over liquid water; so the file is read. The page then turns it into vapor pressure, and gives dew point and RH over ice, as all lessons do.
cause-ask = What do you think wets this roof?
cause-show = Show what the readings point to
# $guess is what the reader said.
they-point-to = { $right ->
    [yes] They point to: { $cause }. You said the same.
   *[no] They point to: { $cause }. You said: { $guess }.
}
cause-order = Ask in this order: room humidity, air leaks, vents, rain, water from the build. If the wet spot follows the rain, start there. Two causes can act at once.
cause-head = What wets it
meter-corrected = Corrected: { $moisture } MC.
meter-numbers = Slope and offset must be numbers.
meter-head = A pin meter's reading, corrected
meter-dial = On the dial
meter-temperature = Wood temperature
meter-slope = Species slope
meter-offset = Species offset
meter-hint = Slope and offset stand in the meter's booklet. Above 25 to 30 % it is only a hint.
model-roof = Roof to compare with
model-leak = Blower door of the house
model-leak-unit = air changes at 50 Pa
model-no-leak = empty: no air leak in the model
model-run = Run the model over these hours
# $late is how many hours lie between the two; $when says which comes first, or that none is found.
model-agreement = { $when ->
    [after] Vapor pressure at the cold face, measured less modeled: { $bias } on average, likeness { $correlation } over { $hours } hours; the measured line comes { $late } after the model's. A steady difference can be the sensor; bursts can be an air leak: give the model one and look whether it fits better. A slow drift can be wetter wood at the start.
    [before] Vapor pressure at the cold face, measured less modeled: { $bias } on average, likeness { $correlation } over { $hours } hours; the measured line comes { $late } before the model's. A steady difference can be the sensor; bursts can be an air leak: give the model one and look whether it fits better. A slow drift can be wetter wood at the start.
    [together] Vapor pressure at the cold face, measured less modeled: { $bias } on average, likeness { $correlation } over { $hours } hours; the measured line and the model's move in the same hours. A steady difference can be the sensor; bursts can be an air leak: give the model one and look whether it fits better. A slow drift can be wetter wood at the start.
   *[unknown] Vapor pressure at the cold face, measured less modeled: { $bias } on average, likeness { $correlation } over { $hours } hours. A steady difference can be the sensor; bursts can be an air leak: give the model one and look whether it fits better. A slow drift can be wetter wood at the start.
}
model-head = Measured against modeled
not-done = That could not be done; nothing was changed.
file-too-large = { $file }: it is larger than { $limit } bytes, too large for a logger file.
model-leak-wrong = Air changes at 50 Pa is "{ $ach50 }"; it must be a number, 0 to 50 1/h.
no-lag = none found
lag-none = none
# $hours is a number of hours with its unit.
lag-before = it moves { $hours } before the room: the room does not drive it, or a clock is off
hours = { $hours } h

## The picture.

axis-days-from = days from { $start }
axis-days = days from the start
axis-temperature = temperature, { $unit }
axis-humidity = relative humidity, %
axis-pressure = vapor pressure, { $unit }
axis-wood = wood moisture, mass %
alt-line = { $place }: lowest { $low }, mean { $mean }, highest { $high }
alt-next = { $first }; { $next }
alt-nothing = nothing that can be used
# $lines is what `alt-line` says of each line.
alt-readings = Temperatures over { $days ->
    [one] { $days } day
   *[other] { $days } days
}. { $lines }.
alt-humidities = Relative humidity. { $lines }.
alt-vapor = Vapor pressures over { $days ->
    [one] { $days } day
   *[other] { $days } days
}. { $lines }.
alt-model = Wood moisture over { $days ->
    [one] { $days } day
   *[other] { $days } days
}. { $lines }.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

showers-why = { $minutes } minutes is far too fast for a film. Only moving air does that.
showers-ask = Each day at { $hour }:00 someone showers. Within { $minutes } minutes the vapor pressure in the roof jumps from { $before } to { $after }. What is the cause?
showers-hint = How fast did it come? What can move that fast?
showers-right = An air path from the bathroom.
showers-vapor-barrier-is-air-barrier = Diffusion through the film.
showers-vapor-barrier-is-air-barrier-reply = A film lets far too little through in { $minutes } minutes to lift the whole cavity.
showers-vapor-barrier-is-air-barrier-seems = The film is all that lies between, so you look at it first.
showers-wet-roof-needs-vents = A rain leak.
showers-wet-roof-needs-vents-reply = Rain would follow the weather, not the shower.
showers-logger-90-means-wet = The logger. Such jumps are not real.
showers-logger-90-means-wet-reply = It comes each day with the shower. It is real.
showers-logger-90-means-wet-seems = Loggers do fail, and a jump looks like a fault.
noon-leap-why = { $inside } in the roof against a flat { $outside } outdoors. It came out of the wood.
noon-leap-ask = At noon the sun is on the roof and the logger shows { $warm } and { $rh }. Outdoors it stays { $cool } and { $outdoor } all day. By night the vapor pressure in the roof is low again. What is the cause?
noon-leap-hint = Work out the vapor pressure outdoors and in the roof at noon. Which is higher?
noon-leap-right = Water stored in the wood, driven off by the heat.
noon-leap-rh-alone = Humid air from outdoors.
noon-leap-rh-alone-reply = The outdoor vapor pressure did not move.
noon-leap-logger-90-means-wet = A broken logger.
noon-leap-logger-90-means-wet-reply = It comes and goes with the sun, as stored water does.
noon-leap-logger-90-means-wet-seems = Loggers do fail, and a jump looks like a fault.
noon-leap-house-must-breathe = Showers in the house.
noon-leap-house-must-breathe-reply = It follows the sun, not the people.
noon-leap-house-must-breathe-seems = Showers come each day too.
cold-ninety-why = It is only { $found }, as much as a room at { $warm } and { $room }. The frost point is { $dew }, below the face.
cold-ninety-ask = All January the logger under an open outer membrane shows { $cold } and { $rh }. Outdoors reads the same. What does it mean?
cold-ninety-hint = Hold the logger against the outdoor air. How much vapor is in air that cold?
cold-ninety-right = Normal: it follows the outdoor air.
cold-ninety-logger-90-means-wet = A wet roof. { $rh } is wet.
cold-ninety-wet-roof-needs-vents = A rain leak.
cold-ninety-dew-point-is-a-place = Water is forming there.
cold-ninety-dew-point-is-a-place-reply = { $rh } is below 100 %, so nothing forms.
