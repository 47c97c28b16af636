### Lesson your readings.

## The page.

show = Show
show-readings = as logged: T and RH
show-vapor = as vapor pressure
show-model = wood, with the model
offset-temperature = Roof sensor reads low by
offset-temperature-error = Error of the roof temperature
offset-humidity = Roof humidity reads low by
offset-humidity-error = Error of the roof humidity
clock = Roof clock is slow by
clock-error = Error of the roof clock
choose-one = choose one
cause-none = none: it follows outdoors
# What can wet a roof.
cause-rain-leak = rain leak
cause-air-leak = air leak
cause-blocked-vents = blocked vents
cause-built-in-water = built-in water
cause-indoor-humidity = indoor humidity
cause-outdoor-air = outdoor air
cause-not-clear = not clear
# The names that a place of the logger has in this lesson.
place-indoors = indoors
place-cavity = in the roof
place-outdoors = outdoors
place-logger = the logger
# $places is a list of what is missing.
places-missing = To look for a cause it takes readings indoors, in the roof and outdoors; missing: { $places }.
no-pairs = No hour has both a temperature and a humidity; look at the columns, units and decimal sign below.
wood-measured = measured, corrected
wood-modeled = modeled
mean-pressure = In the roof, mean vapor pressure
above = At least a tenth over outdoors
above-note = of the hours
lag = Lag behind the room
margin = Least margin to the dew point
bias = Measured less modeled
bias-text = run the model
# What its air moves like hour by hour, each with the others taken out.
likeness = { $most ->
    [room] In { $share } of the hours the roof has at least a tenth more vapor than outdoors. Hour by hour it moves most like the room.
    [outdoors] In { $share } of the hours the roof has at least a tenth more vapor than outdoors. Hour by hour it moves most like outdoors.
    [sun] In { $share } of the hours the roof has at least a tenth more vapor than outdoors. Hour by hour it moves most like the sun on the deck.
   *[none] In { $share } of the hours the roof has at least a tenth more vapor than outdoors. It is too full of vapor to show what it moves like.
}
# $said is what `likeness` says; $share of the hours.
over-full = { $said } In { $share } of the hours the roof reads over 100 % RH. No air holds that: look at the offset, or the sensor.
# One reading of each place, worked by hand.
step-hour = { $place ->
    [cavity] The roof at { $time }.
    [indoors] Indoors at { $time }.
    [outdoors] Outdoors at { $time }.
   *[logger] The logger at { $time }.
}
step-same-hour = { $place ->
    [outdoors] Outdoors, the same hour.
   *[indoors] Indoors, the same hour.
}
step-compare = Compare: the roof less outdoors.
file = The file
open = Open
file-upload = or a CSV from this computer
sample = a file that is a mess: { $name }
house = house { $letter }
frost-hint = In frost a humidity sensor shows RH over liquid water. So the file is read, and so it is drawn here: as logged. For causes the page turns it into vapor pressure. Over ice the same air has a higher RH: 90 % on a logger at { $cold } is { $ice } over ice, as the other lessons count it.
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
spot-head = One reading of a logger
spot-humidity = RH on the logger
spot-temperature = Temperature there
spot-hint = Wood goes by the RH at its face, and slowly: over weeks. Mold needs warmth too: none starts at freezing or below. A logger in frost shows RH over water, and wood goes by that.
# $moisture is where wood ends; $weeks until mold can start.
spot-goes-to = { $mold ->
    [yes] If this lasts, lumber there ends at { $moisture } MC. Mold could start after about { $weeks } weeks.
   *[no] If this lasts, lumber there ends at { $moisture } MC. No mold starts in such air.
}
meter-head = A pin meter's reading, corrected
meter-dial = On the dial
meter-temperature = Wood temperature
meter-slope = Species slope
meter-offset = Species offset
meter-hint = Slope and offset stand in the meter's booklet. Above 25 to 30 % it is only a hint. Never read on a glue line, in treated lumber or through foil: that number means nothing.
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
showers-ask = It is October, under a metal roof. Each day at { $hour }:00 someone showers. Within { $minutes } minutes the vapor pressure in the roof jumps from { $before } to { $after }. The wood gets wetter each week. What do you do first?
showers-hint = How fast did it come? What can move that fast?
showers-right = Find the air path from the bathroom and seal it.
showers-wet-roof-needs-vents = Add vents. A roof that gets wet needs more of them, or it leaks.
showers-wet-roof-needs-vents-reply = Vents and rain are what a roofer looks for first. But wind and rain know nothing of a shower at { $hour }:00. More vents can even pull more house air through the hole.
showers-vapor-barrier-is-air-barrier = Look for a gap in the film. With one gap a vapor barrier is useless.
showers-vapor-barrier-is-air-barrier-reply = A small gap spoils little of what a film does for vapor: the film still covers nearly all of the area. What comes in { $minutes } minutes is air. Look for the path it takes, in lights, pipes and the tops of walls.
showers-blames-the-sensor = Change the logger. Such jumps are not real.
showers-blames-the-sensor-reply = It comes each day with the shower. A bad sensor does not know when someone showers.
noon-leap-why = { $inside } in the roof against a flat { $outside } outdoors. It came out of the wood.
noon-leap-ask = At noon the sun is on the roof and the logger shows { $warm } and { $rh }. Outdoors it stays { $cool } and { $outdoor } all day. By night the vapor pressure in the roof is low again. What is the cause?
noon-leap-hint = Work out the vapor pressure outdoors and in the roof at noon. Which is higher?
noon-leap-right = Water stored in the wood, driven off by the heat.
noon-leap-rh-alone = Outdoor air. The two RH numbers are near each other, so it is the same air.
noon-leap-rh-alone-reply = The RH numbers are near, and the air is not: { $inside } in the roof, { $outside } outdoors. Warm air at that RH holds far more.
noon-leap-blames-the-sensor = A broken logger.
noon-leap-blames-the-sensor-reply = It comes and goes with the sun, as stored water does.
noon-leap-wet-roof-needs-vents = Too few vents. A roof that is wet needs more.
noon-leap-wet-roof-needs-vents-reply = Vents may help it dry. They are not the cause: the vapor rises with the sun, so it comes out of wood that was wet before. Ask first how it got wet.
# Two loggers in two seasons: which one costs a roof.
months-at-ninety-why = At { $mild } mold could start after about { $weeks } weeks at { $lower }. At { $cold } it sleeps. The wood would end at { $in_may } in May, at { $in_january } in January.
months-at-ninety-ask = Two tile roofs, each with a logger under the deck. One showed { $rh } all January at { $cold }. The other shows { $lower } all May at { $mild }. Which one do you act on?
months-at-ninety-hint = Read the temperature beside the RH. What needs warmth to grow?
months-at-ninety-right = The one in May. It is warm enough for mold to grow.
months-at-ninety-logger-90-means-wet = The one in January. { $rh } RH means that the roof is wet.
months-at-ninety-logger-90-means-wet-reply = The higher number looks like the wetter roof. Wood takes weeks to follow it, and at { $cold } mold sleeps. In May, { $lower } is enough: about { $weeks } weeks at { $mild }.
months-at-ninety-wet-roof-needs-vents = Both, with vents. Wet roofs need vents.
months-at-ninety-wet-roof-needs-vents-reply = Vents come third in the order, and a cold roof that follows the yard needs none for that. Start with May, and ask first where the vapor comes from.
months-at-ninety-trust-the-trend-later = Neither. Both settle by themselves.
months-at-ninety-trust-the-trend-later-reply = January may, as it warms and the air gets drier. In May there is no such time to wait for: about { $weeks } weeks at { $mild } and mold can start.
cold-pins-why = Cold wood conducts less, so the meter reads low. At { $cold } a reading of { $dial } is about { $found }.
cold-pins-ask = A deck of boards in December, at { $cold }. The pin meter is set for room temperature and reads { $dial }. You close the roof below { $limit }. Do you close it?
cold-pins-hint = How cold is the wood? Which way does the cold move the needle?
cold-pins-right = No. It is about { $found }.
cold-pins-meter-reads-true = Yes. The meter says { $dial }, so it is { $dial }.
cold-pins-meter-reads-true-reply = It is a number on a screen, and at room temperature it would be right. At { $cold } the wood holds about { $found }, over { $limit }.
cold-pins-correction-wrong-way = Yes. Cold wood reads too high, so it is only about { $less }.
cold-pins-correction-wrong-way-reply = Cold and damp feel alike, so you take some off. But cold wood conducts less: the meter reads too low. Add. It is about { $found }.
cold-pins-wrong-tool = Read it once more on a glue line or a treated plate. There it reads true.
cold-pins-wrong-tool-reply = Glue and the salts in treated lumber conduct by themselves, so pins there read far too high. Read in plain lumber, and correct for the cold: about { $found }.

## The beats

# $place is where the logger is.
logger-of = { $place ->
    [indoors] Room: { $warmth }, { $humidity }
    [cavity] Roof: { $warmth }, { $humidity }
   *[outdoors] Yard: { $warmth }, { $humidity }
}
logger-shows = Logger: { $warmth }, { $humidity }
trace-of-room = room air: { $mean }
trace-of-both = roof and yard: { $mean }
paper-humidity = RH, roof and yard: { $low } to { $high }
paper-wood = Wood, four weeks: { $start } to { $end }
paper-all = Vapor pressure, four weeks
paper-rises = Roof's rise at each shower
wood-goes-to = Wood ends at { $percent }
mold-sleeps = Too cold for mold
mold-starts = Mold in about { $weeks } weeks
the-gap = air through a gap
the-plug = vent stuffed shut
pins-wood = wood at { $warmth }
pins-true = wood: { $percent }
pins-dial = dial: { $percent }
pins-care = care: { $percent }

beat-first-say = A foggy January. The logger in this roof shows 90 %. Is the roof wet?
beat-first-ask = Take a letter in the picture, or choose from the list.
beat-first-answer = The roof reads what the yard reads. Its wood went from { $start } to { $now } in four weeks. In such air it ends at { $end }.
beat-first-also = { $warmth } and { $humidity } on average, in the roof and in the yard.
beat-ninety-say = The same { $humidity } in January and in April. Which one costs a roof?
beat-ninety-ask = Bet on both before you see either.
beat-ninety-first = January
beat-ninety-second = April
beat-ninety-january-ask = Can mold start in January, at { $cold }?
beat-ninety-january-yes = Yes. { $humidity } means the roof is wet.
beat-ninety-january-no = No. It is too cold for that.
beat-ninety-january-yes-reply = { $humidity } in a room would be a wet room. But no mold starts below { $freezing }. The wood drifts toward { $wood }, over weeks. Look again when it warms.
beat-ninety-january-no-reply = Cold keeps mold asleep. But it does not dry the wood: that drifts toward { $wood }, over weeks.
beat-ninety-april-ask = And in April, at { $mild }?
beat-ninety-april-yes = Yes. { $humidity } means the roof is wet.
beat-ninety-april-no = No. It is a mild day.
beat-ninety-april-yes-reply = Here it can: after about { $weeks } weeks. It takes the warmth, not the { $humidity } alone.
beat-ninety-april-no-reply = Mild is what mold waits for. After about { $weeks } weeks at { $humidity } it can start.
beat-ninety-answer = The wood ends at { $wood } in both. Only April is warm enough: mold can start in about { $weeks } weeks.
beat-ninety-also = The wood goes by the RH. Mold needs warmth too.
beat-vents-say = Two roofs whose wood rises alike. Which one needs its vents opened?
beat-vents-ask = No spot follows the rain in either. Bet on both.
beat-vents-first = House B
beat-vents-second = House C
beat-vents-left-ask = What does house B need first?
beat-vents-left-vents = Vents. A wet roof needs vents.
beat-vents-left-seal = A tight ceiling.
beat-vents-left-vents-reply = Vents are what one can see and sell. But the roof jumps with the room: after { $left-jumps } of { $left-count } showers, within the hour. Only air through a gap does that. Seal it first.
beat-vents-left-seal-reply = After { $left-jumps } of { $left-count } showers the roof jumped within the hour. Only air through a gap is that fast.
beat-vents-right-ask = And house C?
beat-vents-right-vents = Vents. A wet roof needs vents.
beat-vents-right-seal = A tight ceiling.
beat-vents-right-vents-reply = Here they do: after { $right-jumps } of { $right-count } showers the roof jumped, and it does not follow the yard. What seeps in finds no way out.
beat-vents-right-seal-reply = It is tight: after { $right-jumps } of { $right-count } showers the roof jumped. It does not follow the yard either. The vent is stuffed shut.
beat-vents-answer = The wood rose alike. House B jumped after { $left-jumps } of { $left-count } showers, house C after { $right-jumps }. Ask what it follows, then mend.
beat-vents-also = Wood in house B: { $left-start } to { $left-end }. In house C: { $right-start } to { $right-end }. A jump, over the dashed line: { $jump } or more within the hour.
beat-meter-say = The same { $dial } on the dial, in warm wood and in cold. What does each hold?
beat-meter-ask = Bet on both before you see either.
beat-meter-first = Wood at { $room }
beat-meter-second = Wood at { $temperature }
beat-meter-warm-ask = What does the warm wood hold?
beat-meter-warm-same = { $dial }. The meter says it.
beat-meter-warm-more = More than the dial says.
beat-meter-warm-same-reply = In plain lumber at room temperature, yes: { $warm }. The meter is set for that.
beat-meter-warm-more-reply = At room temperature the meter is right: { $warm }. It is set for that.
beat-meter-cold-ask = And the cold wood?
beat-meter-cold-same = { $dial }. The meter says it.
beat-meter-cold-more = More than the dial says.
beat-meter-cold-same-reply = The dial is the same, the wood is not. Cold wood conducts less, so the meter reads low. It holds { $cold }.
beat-meter-cold-more-reply = Cold wood conducts less, so the meter reads low. It holds { $cold }.
beat-meter-answer = { $dial } on both dials. The warm wood holds { $warm }, the cold wood { $cold }: { $points } points more, and over the 20 % where care begins.
beat-meter-also = Never on a glue line or in treated lumber: there no table helps.
