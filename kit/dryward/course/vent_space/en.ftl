### Lesson vent space.

## The page.

# $room is an air; $changes is a blower-door number, $share the part of the house's leaks that is in this roof.
given = room { $room }, outdoors { $cold }, rafters { $rafter } long, { $area } with a variable film; a house of { $volume } with { $changes } air changes an hour at 50 Pa, { $share } of its leaks in this roof; a shower: { $minutes } minutes of { $bath } at { $fan }, one a day, into one bay { $bay } wide
bay = Bay and ceiling
leak-leaky = leaky, 4 Pa on it
leak-pulled = leaky, vent pulls 2 Pa more
leak-airtight = airtight
leak-bath-fan = airtight, bath fan into the bay
leak-cut = airtight, skylight cuts the bay
# Where leaks bring water, $more stay in the roof below; $fan is what a bath fan blows in.
load-note = { $by ->
    [vapor] { $vapor } by vapor
    [fan] { $fan } by the bath fan, { $vapor } by vapor
   *[leaks] { $air } by air, { $vapor } by vapor; { $more } more stay in the roof below
}
power = Vent air can carry, at most
load = Comes into the vent space
rest = Room to spare
rest-too-little = more comes than can go
needed = 1/{ $ratio } asks for
needed-note = eaves { $low }, ridge { $high }
provided = The gap is open
provided-note = a code minimum is not physics
opening-us = { $opening } in²/ft
opening-si = { $opening } cm²/m
# The vent air on such a day, as a sentence or as a piece after a semicolon.  $full is where the outdoor air is full;
# $meaning what becomes of all that comes, $times as much as can go.
carries = { $begins ->
    [sentence] At
   *[clause] at
} { $cold } and { $humidity } { $full ->
    [yes] the outdoor air is at 100 % and carries nothing off, however wide the gap
   *[no] the vent air can carry at most { $power }
}{ $meaning ->
    [keeps-up] : on such a day it can keep up
    [at-best] : at best it keeps up
    [all-stays] : all of it stays
    [part-stays] : part of it stays
   *[most-stays] , and { $times } as much comes: most of it stays
}
# $pulls where the vent pulls 2 Pa more already: $leaking are what it draws in, $other without that pull; else the
# other way round. $below stays each day, $below_winter in a winter of $days such days.
pull = { $pulls ->
    [yes] With 2 Pa less pull the leaks bring { $other }, not { $leaking }.
   *[no] A vent that pulls 2 Pa more draws { $other } through the leaks, not { $leaking }.
}
seeps = Another { $below } seeps in and stays in the roof below, where no vent air gets: { $below_winter } in { $days } such days.
# $little where more comes than can go though no air leaks.
airtight = { $little ->
    [yes] By vapor { $load } come; { $carries }. The ceiling is airtight, so it is little.
   *[no] By vapor { $load } come; { $carries }.
}
leaks = Leaks bring { $leaking } of the { $load } that come; { $carries }. That is wind, which nobody sets, and on a still day it cannot. { $seeps } { $pull } A sealed ceiling would bring { $vapor } in all.
leaks-first = The ceiling leaks: { $leaking } of the { $load } that come are brought by its air. { $carries }. { $seeps } Seal the ceiling first. { $pull }
# $load comes into a bay that no air goes through.
cut-off = No air goes through this bay, from the eave to the ridge, so nothing is carried off. By vapor { $load } come, and all of it stays.
bath-fan = The bath fan blows { $blown } into this bay; { $carries }. A duct that ends outdoors would leave { $vapor }, by vapor.
step-water = Most water in each m³ of outdoor air; and what is in it now.
step-carried = { $open ->
    [no] No air goes through this bay: it takes nothing along.
   *[yes] For each m² of roof: gap (m) × speed (m/s) / rafter (m) × the water it can still take × 86 400 s.
}
step-fan = One shower, { $minutes } minutes at { $fan }: m³/s × s × kg of dry air in each m³ × the g of water with each kg of it over what there can be out there; spread over one bay.
step-area-us = 600 ft² × 144
step-area-si = { $area } m² × 10 000
step-low-us = 60 ft
step-low-si = { $eaves } m
step-area = Net free area by 1/{ $ratio }.
step-low = Half of it low, over all eaves.
step-leaks = Air through the leaks at { $push } Pa, from the blower door; the kg of dry air in each m³; the g of water with each kg of that, in the room and at the most out there.
step-straight = { $share } of that air is taken to seep; the rest gets to the vent space.

## The picture.

graph-along = distance from the eave, { $unit }
graph-humidity = RH of the moving air, %
eave = eave
ridge = ridge
month = month
can-carry = can carry
air-line = brought by moving air
vapor-line = by vapor
alt-air = { $way ->
    [none] No air moves through the gap of { $gap }; what stands in it is at { $end }.
    [up] Air moves up a gap of { $gap } with { $speed }; its relative humidity goes from { $start } at the eave to { $end } at the ridge.
   *[down] Air moves down a gap of { $gap } with { $speed }; its relative humidity goes from { $start } at the eave to { $end } at the ridge.
}
alt-months = In { $short } of 12 months more water arrives than the gap can carry; the least it can carry is { $power }, the most that arrives { $loads }.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

# $left is one of share-25 to share-50.
share-25 = a quarter
share-33 = a third
share-40 = two fifths
share-50 = half
fog-why = The air is near 100 %. It had { $room } left until then. Now it has { $rest }, { $left } as much.
fog-ask = Two roofs have the same vents, by 1/300, and the same light wind. One stands at { $cold } and { $dry }, and its vent air can carry off { $before }. The other stands in fog, at { $cold } and { $damp }. How much can its air carry?
fog-hint = How much can this air take up up to 100 %, and how much could the other?
fog-right = { $after }, { $left } as much.
fog-one-in-300-is-physics = { $before } too. Both have their 1/300, and that is what dries a roof.
fog-one-in-300-is-physics-reply = 1/300 is an area. What dries is the air that moves through it, and this air comes in near 100 %. { $after } is all it can take.
fog-winter-fog-is-wet-air = Nothing. Fog is wet air, and it wets the roof.
fog-winter-fog-is-wet-air-reply = It can still take { $after }. It would bring water only to a face colder than its dew point.
fog-starts-with-dry-air = { $before } too. Cold air comes in dry.
fog-starts-with-dry-air-reply = But this air is at { $damp } already. It can take { $after } and no more.
what-300-needs-why = 40 to 50 % of it must be high, near the ridge, the rest low. In zones 6 to 8 a class I or II retarder must be on the warm side. This is a code minimum, as adopted locally, not physics.
what-300-needs-ask = A vault of { $area } needs { $high } of net free area by 1/150. When may it be { $low } by 1/300?
what-300-needs-hint = Look up what the code asks for beside the area.
what-300-needs-right = When 40 to 50 % is high and the rest low, plus a retarder in cold zones.
what-300-needs-one-in-300-is-physics = Always. 1/300 is what physics asks for.
what-300-needs-all-area-at-one-end = When all of it is at the ridge.
first-fix-why = { $brings } come and at most { $carries } can leave. Stop it at the source.
first-fix-ask = In a mild winter, { $cold } and 80 % outside, the vent of a { $area } vault can carry off { $carries }. Its ceiling leaks: at 4 Pa about { $brings } more are blown in than air that cold can have. What helps first?
first-fix-hint = Hold two numbers against each other: what is blown in, and what the vent can carry off.
first-fix-right = Air-seal the ceiling.
first-fix-more-vents-always-help = A bigger ridge vent. More vents always help.
first-fix-more-vents-always-help-reply = More pull at the ridge can draw in more house air than the vent takes out.
first-fix-fan = A powered fan in the vent. More air always helps.
first-fix-fan-reply = A fan that pulls on a leaky ceiling draws more house air into the roof. It can also pull flue gas back down the chimney. Seal first.
first-fix-fan-seems = A fan moves more air than the wind does.
duct-end-why = One shower blows in { $shower } more than air that cold can have. The air of one bay carries off at most { $carries } a day.
duct-end-ask = It is spring, { $cold } and { $rh } outside. A bath fan carries off one shower a day. Where does its duct have to end?
duct-end-hint = Weigh the water of one shower, and what the air of one bay can take in a day.
duct-end-right = Outdoors, through a roof or wall cap, well away from the inlets of the vent.
duct-end-bath-fan-into-vent = In the soffit or in the vent space. It is outside air there.
duct-end-bath-fan-into-vent-reply = Outdoor air does go through there, but little of it: at most { $carries } of water a day go along. One shower brings { $shower }.
duct-end-more-vents-always-help = In the vent space, with more ridge vent. More vents always help.
duct-end-more-vents-always-help-reply = Twice the gap would carry twice { $carries }. That is still less than { $shower }.
hip-bays-why = The { $cut } bays under the hips have no way out at the ridge. Air goes through { $open } of { $all }.
hip-bays-ask = A hip roof has { $all } bays and a vent along its ridge. { $cut } of the bays end at a hip rafter, below the ridge. Through how many bays can air go from the eave to the ridge?
hip-bays-hint = Follow the air up one bay that ends at the hip. Where can it go out?
hip-bays-right = Through { $open } bays.
hip-bays-ridge-vent-vents-every-bay = Through all { $all }. There is a ridge vent.
hip-bays-ridge-vent-vents-every-bay-reply = The ridge vent is above { $open } of them.
hip-bays-more-vents-always-help = Through all { $all }, once the ridge vent is made twice as wide. More vents always help.
hip-bays-more-vents-always-help-reply = A wider slot at the ridge is no nearer to the bays that end below it.

## The beats

stage-gap = Gap { $gap }
stage-comes = Comes: { $amount } a day
stage-can-go = Air can take: { $none ->
        [yes] none
       *[no] { $amount } a day
    }
stage-stays = { $none ->
        [yes] Stays: none
       *[no] Stays: { $amount } a day
    }
stage-ridge-vent = ridge vent
stage-eave-vent = eave vent
stage-skylight = skylight
stage-fan = One shower: { $amount }
stage-scale = { $number } dots a minute: { $roof }, or { $bay } a day in one bay.
beat-first-say = Same vents, both by 1/300. Over which ceiling does the vent keep up?
beat-first-ask = Take a letter in the picture, or choose from the list.
beat-first-first = Airtight ceiling
beat-first-second = Leaky ceiling
beat-first-answer = Both meet 1/{ $ratio }, { $times } times over. One roof keeps nothing. The other keeps { $left } on { $area } in a winter of { $days } such days.
beat-first-also = { $comes } come, { $can_go } can go, { $flux } stay
beat-doubled-say = Twice the vent, and a ridge that pulls 2 Pa more. What is left in each roof?
beat-doubled-ask = Bet on both before you see either.
beat-doubled-first = Airtight, twice the vent
beat-doubled-second = Leaky, twice the vent
beat-doubled-tight-ask = Over the airtight ceiling, how much stays?
beat-doubled-tight-less = Less than with the small vent.
beat-doubled-tight-same = As much as with the small vent.
beat-doubled-tight-more = More than with the small vent.
beat-doubled-tight-less-reply = More air could carry more, but there is nothing more to carry: only { $tight } a day come, and the small vent took all of it. None was left before, and none is now.
beat-doubled-tight-same-reply = Only { $tight } a day come, and the small vent took all of it. None was left before, and none is now.
beat-doubled-tight-more-reply = A pull draws in air only where there are holes. This ceiling has none: { $tight } a day come, all by vapor, and none is left.
beat-doubled-leaky-ask = And over the leaky ceiling?
beat-doubled-leaky-less = Less than with the small vent.
beat-doubled-leaky-same = As much as with the small vent.
beat-doubled-leaky-more = More than with the small vent.
beat-doubled-leaky-less-reply = The bigger vent can take { $adds } a day more. But its pull draws in { $draws } a day more through the leaks. A winter leaves { $now }, not { $then }. Even with no such pull it would leave { $still }.
beat-doubled-leaky-same-reply = Two things change here, and they do not cancel. The vent can take { $adds } a day more, and its pull draws in { $draws } a day more.
beat-doubled-leaky-more-reply = The vent can take { $adds } a day more, and its pull draws in { $draws } a day more. Even with no such pull { $still } would be left.
beat-doubled-answer = Over the leaky ceiling the small vent left { $then } a winter on { $area }, and the big one leaves { $now }. The airtight roof keeps none with either.
beat-doubled-also = { $flux_then } before, { $flux } now
beat-shower-say = One shower a day. Does the bay keep any of its water?
beat-shower-ask = Bet on both before you see either.
beat-shower-first = Duct ends outdoors
beat-shower-second = Duct ends in the vent space
beat-shower-outdoors-ask = The duct goes out through the covering. What does the bay keep?
beat-shower-outdoors-none = Nothing. It is outside air there.
beat-shower-outdoors-much = Most of the water of each shower.
beat-shower-outdoors-none-reply = All { $shower } are outdoors. By vapor only { $by_vapor } a day come into this bay, and its air can take { $carries }.
beat-shower-outdoors-much-reply = The duct crosses the bay, but it does not open there. All { $shower } go outdoors. The bay's air has only { $by_vapor } a day to take.
beat-shower-inside-ask = The duct stops in the vent space. What does the bay keep?
beat-shower-inside-none = Nothing. It is outside air there.
beat-shower-inside-much = Most of the water of each shower.
beat-shower-inside-none-reply = The space is open to outdoors, so it looks like outdoors. But a shower blows in { $shower }, and the air of a whole day in this bay can take { $carries }.
beat-shower-inside-much-reply = A shower blows in { $shower } more than air that cold can have. The air of a whole day in this bay can take { $carries }.
beat-shower-answer = { $showers } showers of a winter: { $winter } that this one bay cannot carry off. With the duct outdoors: none.
beat-shower-also = { $flux } in this bay
beat-bays-say = One ridge vent over all bays. What does the air carry out of each?
beat-bays-ask = Bet on both before you look inside.
beat-bays-open-ask = A plain bay, open from the eave to the ridge:
beat-bays-open-all = Its air carries off all that comes.
beat-bays-open-none = Its air carries off nothing.
beat-bays-open-all-reply = { $comes } a day come, even through an airtight ceiling, and its air can take { $carries }.
beat-bays-open-none-reply = Air goes in at the eave and out at the ridge here. It can take { $carries } a day, and { $comes } come.
beat-bays-cut-ask = The bay with the skylight:
beat-bays-cut-all = Its air carries off all that comes.
beat-bays-cut-none = Its air carries off nothing.
beat-bays-cut-all-reply = The ridge vent does run over this bay too. But air that goes in at the eave stops at the skylight, and none comes in above it. It takes nothing along, not { $carries }.
beat-bays-cut-none-reply = Below the skylight air cannot go out, above it none can come in. So it takes nothing along, and the next bay takes { $carries }.
beat-bays-answer = The open bay can carry off { $carries } a day, the cut bay none. All stays there: { $left } a winter, and under a leaky ceiling { $leaky } in this one bay.
beat-bays-also = { $flux }, with leaks { $flux_leaky }; a winter of { $days } such days
