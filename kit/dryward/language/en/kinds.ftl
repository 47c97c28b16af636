### The questions of the generator.  $rh and the like are percents; what is an amount comes with its unit.
### A message whose name ends in -why says why the right answer is right.

sd-values-add = The sd values add: { $perms } = { $found }.
perms-in-a-row = { $terms } = { $sum }, and 1 over that is { $perms } perm.
how-many-perms = How many perms do they have together?
what-sd = What sd do they have together?
class-limits-perm = Class I ends at { $one }, class II at { $two }, class III at { $three }.
class-limits-sd = Class I: { $one } m sd or more. Class II: { $two } to { $one }. Class III: { $three } to { $two }.
dew-point-why = Find the saturation pressure at { $warm }, take { $rh } % of it, and look where that is saturation: { $found }.
dew-point = What is the dew point of air at { $warm } and { $rh } %?
direction-why = Vapor pressure is { $inside } inside and { $outside } outside.
direction = Inside it is { $inside } and { $rh_in } %. Outside it is { $outside } and { $rh_out } %. Which way does vapor push?
direction-neither = Neither way. RH and temperature cancel out.
plane-temperature-why = { $outer } of { $total } is outside the batt: { $found }.
plane-temperature = A wall from inside to outside: { $layers }. Its faces are at { $warm } and { $cold }. How warm is the outer face of the batt?
series-perms = Three layers of { $one }, { $two } and { $three } lie in a row. { $asked }
series-perms-open = The other two hold back as well, and vapor must pass all three: { $found }.
retarder-class = A sheet has { $perms } by dry cup. Which vapor retarder class is it?
it-is-class = It is { $kind }.
# $of: which class the wrong answer names.
not-that-class = { $of ->
    [one] { $perms } is more open than class I is. { $limits }
    [two] { $perms } is not in class II. { $limits }
    [three] { $perms } is not in class III. { $limits }
   *[none] { $perms } holds back enough to be in a class. { $limits }
}
water-at-the-outer-layer = On the inner face of the outer layer.
water-nowhere = Nowhere.
water-why = More comes to that cold, tight face than can leave: it gains { $water }.
no-water-why = Even the coldest face stays at { $humid } % RH. As much can leave as comes.{ $damp }
line-or-water = A vault has a { $film } film, { $fill } of fill, and an outer layer of { $outer }. The room is { $room } and { $rh } %, it is { $cold } and 80 % outside. Where does water show up first?
water-at-the-dew-point = In the fill, where it is at the dew point.
water-at-the-film = On the inner film.
film-state-why = The mean RH is { $mean } %. On the log curve that reads { $found }.
film-state = A variable film has { $dry } up to a mean RH of { $low } % and { $wet } from { $high } %, straight on a log scale between. Its faces see { $inside } % and { $outside } %. How open is it?
film-state-dry-end = That is what it has up to a mean RH of { $low } %. { $why }
film-state-damp-end = That is what it has from a mean RH of { $high } % on. { $why }
the-variable-film = the teaching variable film
a-film = a film of { $perms }
film-outer-face = The outer face of the film.
no-face = None.
no-face-inside = None. The film is on the inside, where it always goes.
summer-face-wet-why = The push is inward and the film is cool: { $water } gather on its outer face.
summer-face-july = In this July the damp side is outside, and the film stops the vapor on its cool side: { $water } gather there.
summer-face-dry-why = The outer face of the film stays at { $humid } % RH, below 100 %.{ $damp }
summer-face = It is { $hot } and { $humid } % outside, the room is cooled to { $cool } and 50 %. The vault has { $film } and an open outer membrane. Which face gets wet?
deck-inner-face = The inner face of the roof deck.
drywall-room-face = The room face of the drywall.
drywall = painted drywall
drywall-and-film = painted drywall and a film of { $film }
# $film is whether there is one; $less what would come through drywall and a film of $one.
leak-why = In 150 days about { $stays } stay from the hole, and { $passes } come by diffusion. { $film ->
    [yes] The film holds vapor back all over. It does nothing to the hole.
   *[no] Nothing but drywall holds the vapor back. A film of { $one } would let { $less } by, and do nothing to the hole.
}
leak-or-diffusion = A ceiling of { $area }, { $layers }, has one hole of { $hole } with { $push } Pa across it. The room is { $room } and { $rh } %, the cold face { $cold }. { $way } How much of the water that is left there came with the air, not by diffusion?
leak-no-one-number = No one number holds. { $why }
leak-goes-by = Air that goes straight by keeps its water. { $why }
leak-below-saturation = What is below saturation moves on. { $why }
leak-takes-vapor-along = At { $push } Pa air goes out through the hole and takes its vapor along. { $why }
tail-in2-per-ft = { " " }in² per ft
tail-cm2-per-m = { " " }cm² per m
vent-area-why = 1/{ $ratio } of { $area } is { $total }. Half of it low, over { $eave } of eave.
vent-area = A vault of { $area } is vented by 1/{ $ratio }, half high and half low. The eaves are { $eave } long in all. How much net free area does the eave need?
vent-power-why = The air comes in at { $rh } % and can take up only the other { $rest } %: { $found }.
vent-power = Vent air moves at { $speed } through a { $gap } gap under a { $rafter } rafter. It is { $cold } and { $rh } % outside. Bone-dry air could carry off { $full } here. How much can this air carry at most?
vent-power-share = { $rh } % is what it has already. It can take up the rest alone: { $found }.
vent-power-not-full = It is at { $rh } %, not quite at 100. It can take up { $found }.
air-changes-why-cfm = 60 minutes times { $flow }, over { $volume }: { $found } per hour.
air-changes-why = { $flow } over { $volume }: { $found } per hour. The flow is already per hour.
air-changes = A blower door reads { $flow } at 50 Pa in a house of { $volume }. What is the ACH50?
storage-why = Dry weight times { $change } %: { $found }. At { $rate } that takes { $days } days.
storage = { $board } weighs { $weight } dry. It goes from { $start } % to { $end } % MC. How much water does it take up?
storage-start = It did not start dry. Only the { $change } % in between is new.
# Of each cause that it is not: what it would show, and why it looked right.
not-rain-leak = Rain that gets in shows after rain: here the wood was wetter after { $wetter } of { $spells } spells. { $evidence }
not-air-leak = A leak of house air goes up and down with the room, near 1: here it is { $room }. { $evidence }
not-built-in-water = { $drier ->
    [yes] Water that was built in comes out in bursts when the deck is warm: here in { $above_both } % of hours. { $evidence }
   *[no] Water that was built in comes out, so the wood gets drier: here it is { $points } points wetter. { $evidence }
}
not-indoor-humidity = A damp house is far above outdoors and drives the roof: here the room is { $excess } above. { $evidence }
not-blocked-vents = A wet roof is not yet a roof that needs vents. See what its air follows: the room { $room }, outdoors { $outdoors } (1 is perfect). { $evidence }
suspect-blocked-vents = Vents are what one can see from the ladder.
suspect-rain-leak = Rain is what a roof is there for, so it is the first guess.
suspect-air-leak = House air leaks into most wet roofs.
suspect-built-in-water = Lumber is often closed in wet.
suspect-indoor-humidity = People, showers and pots make most of the vapor in a house.
meter-why = Cold wood conducts less, so the meter reads low. At { $cold } it is about { $found } %.
meter = A pin meter set for room temperature reads { $reading } % in framing lumber at { $cold }. What is the MC?
explain = A client asks: "{ $question }" Answer in one drawing and three sentences.

## What several questions are made of

# Points that are looked for, one after another.
and-also = { $first }; { $next }
board = { $thickness } OSB
layer = { $name } { $thickness } { $r }
direction-by-pressure = { $out ->
    [yes] Out, from high vapor pressure to low.
   *[no] In, from high vapor pressure to low.
}
direction-by-rh = { $out ->
    [yes] Out, from high RH to low.
   *[no] In, from high RH to low.
}
direction-by-temperature = { $out ->
    [yes] Out, from warm to cold.
   *[no] In, from warm to cold.
}
way-straight-by = Most of the hole's air goes straight by: of what it carries past the cold face about a tenth stays.
way-through-the-fill = The hole opens into the fill, and all of its air seeps through and cools down to the cold face.
# What stands behind a number.
tail-percent = { " " }%
tail-ach50 = { " " }ACH50
tail-mc = { " " }MC
cause-rain-leak = Rain gets in.
cause-air-leak = House air leaks in.
cause-built-in-water = Water was built into the wood.
cause-indoor-humidity = The house is too humid.
cause-blocked-vents = Its vents do not work.
logger-cause = { $drier ->
    [yes] Three weeks of readings in a roof. Vapor a tenth or more above outdoors: { $above_out } % of hours. Well above room and outdoors: { $above_both } %. Moves with the room: { $room } (1 is perfect). Moves with outdoors: { $outdoors }. Moves with deck warmth: { $warmth }. Room above outdoors: { $excess }. Wetter after rain: { $wetter } of { $spells } spells. Wood: { $points } points of MC drier. What is the cause?
   *[no] Three weeks of readings in a roof. Vapor a tenth or more above outdoors: { $above_out } % of hours. Well above room and outdoors: { $above_both } %. Moves with the room: { $room } (1 is perfect). Moves with outdoors: { $outdoors }. Moves with deck warmth: { $warmth }. Room above outdoors: { $excess }. Wetter after rain: { $wetter } of { $spells } spells. Wood: { $points } points of MC wetter. What is the cause?
}

## Explain it to a client

rubric-force = names the driving force: vapor pressure, or air that moves
rubric-face = names the face at risk
rubric-drying = says how it dries in the other season
rubric-air-first = takes air before vapor
rubric-limit = states one limit of the model
rubric-units = uses units
ask-wet-with-vents = Why did my new roof get wet when it has vents?
ask-taped-and-open = Why do you tape the film so carefully and then leave the outside open?
ask-bathroom-fan = Why must the bathroom fan run when the house is so new?
ask-both-sides = Why not put plastic on both sides, to be sure?
ask-frost = Why is there frost under the metal when the attic is dry?
ask-wires = Why can I not fill the space with the wires with insulation?
