### Lesson vent space.

## The page.

# $room is an air; $changes is a blower-door number, $share the part of the house's leaks that is in this roof.
given = room { $room }, outdoors { $cold }, rafters { $rafter } long, { $area } of roof with a variable film; a house of { $volume } with { $changes } air changes an hour at 50 Pa, { $share } of its leaks in this roof
ceiling = Ceiling
leak-leaky = leaky, 4 Pa on it
leak-pulled = leaky, vent pulls 2 Pa more
leak-airtight = airtight
# Where leaks bring water, $more stay in the roof below.
load-note = { $leaks ->
    [no] { $vapor } by vapor
   *[yes] { $air } by air, { $vapor } by vapor; { $more } more stay in the roof below
}
power = Vent air can carry, at most
load = The ceiling brings
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
# $little where more comes than can go though no air leaks.
airtight = { $little ->
    [yes] By vapor { $load } come; { $carries }. The ceiling is airtight, so it is little.
   *[no] By vapor { $load } come; { $carries }.
}
leaks = Leaks bring { $leaking } of the { $load } that come; { $carries }. Another { $below } is left in the roof before it gets to the vent. A sealed ceiling would bring { $vapor } in all.
leaks-first = The ceiling leaks: { $leaking } of the { $load } that come are brought by its air. { $carries }. Seal the ceiling first: a vent that pulls more draws more through the leaks.
step-water = Most water in each m³ of outdoor air; and what is in it now.
step-carried = For each m² of roof: gap (m) × speed (m/s) / rafter (m) × the water it can still take × 86 400 s.
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
air-line = brought by air
vapor-line = by vapor
alt-air = { $way ->
    [up] Air moves up a gap of { $gap } with { $speed }; its relative humidity goes from { $start } at the eave to { $end } at the ridge.
   *[down] Air moves down a gap of { $gap } with { $speed }; its relative humidity goes from { $start } at the eave to { $end } at the ridge.
}
alt-months = In { $short } of 12 months more water arrives than the gap can carry; the least it can carry is { $power }, the most that arrives { $loads }.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

share-25 = a quarter
share-33 = a third
share-40 = two fifths
share-50 = half
# $left is one of share-25 to share-50.
fog-why = The air is near 100 %. It had { $room } left until then. Now it has { $rest }, { $left } as much.
fog-ask = A { $gap } vent space can carry off { $before } at { $cold } and { $dry }. Now fog comes in, { $cold } and { $damp }. How much can it carry?
fog-hint = How much can this air take up up to 100 %, and how much could the other?
fog-more-vents-always-help-reply = Air moves as before, but it comes in near 100 %.
fog-winter-fog-is-wet-air-reply = It can still take a little. It would bring water only to a face colder than its dew point.
fog-rh-alone-reply = What counts is how much is left up to 100 %, not the RH itself.
what-300-needs-why = 40 to 50 % of it must be high, near the ridge, the rest low. In zones 6 to 8 a class I or II retarder must be on the warm side. This is a code minimum, as adopted locally, not physics.
what-300-needs-ask = A vault of { $area } needs { $high } of net free area by 1/150. When may it be { $low } by 1/300?
what-300-needs-hint = Look up what the code asks for beside the area.
what-300-needs-right = When 40 to 50 % is high and the rest low, plus a retarder in cold zones.
what-300-needs-more-vents-always-help = With any vents, as long as the area is there.
what-300-needs-one-in-300-is-physics = Always. 1/300 is what physics asks for.
what-300-needs-all-area-at-one-end = When all of it is at the ridge.
first-fix-why = { $brings } come and at most { $carries } can leave. Stop it at the source.
first-fix-ask = A house at { $ach } ACH50 has { $share } of its leaks in a { $area } vault. At 4 Pa they blow about { $brings } more into the vent space than air that cold can have. The vent can carry off { $carries }. First fix?
first-fix-hint = Hold two numbers against each other: what is blown in, and what the vent can carry off.
first-fix-right = Air-seal the ceiling.
first-fix-more-vents-always-help = A bigger ridge vent.
first-fix-more-vents-always-help-reply = More pull at the ridge can draw in more house air than it carries off.
first-fix-wet-roof-needs-vents = A powered fan in the vent.
first-fix-wet-roof-needs-vents-reply = A fan that pulls on a leaky ceiling draws more house air into the roof. It can also pull flue gas back down the chimney. Seal first.
first-fix-wet-roof-needs-vents-seems = A fan moves more air than the wind does.
first-fix-one-in-300-is-physics = Vents by 1/300, and it is done.
