### Lesson vent space.


## The page.

leak = Leak
ceiling = Ceiling
leaky-4-pa-on = leaky, 4 Pa on it
leaky-vent-pulls-2 = leaky, vent pulls 2 Pa more
gap = Gap
air = Air
by-vapor = { $diffusion } by vapor
by-air-more-stay = { $blown } by air, { $parts }; { $below } more stay in the roof below
power = Vent air can carry, at most
load = The ceiling brings
rest = Room to spare
rest-note-else = more comes than can go
needed = 1/{ $ratio } asks for
needed-note = eaves { $low }, ridge { $high }
provided = The gap is open
provided-note = a code minimum is not physics
at-and = at { $cold } and { $humidity }
the-vent-air-can = { $day } the vent air can carry at most { $power }
the-outdoor-air-is = { $day } the outdoor air is full and carries nothing off, however wide the gap
the-ceiling-is-airtight = . The ceiling is airtight, so it is little
by-vapor-come = By vapor { $load } come; { $carries }{ $little }.
leaks-bring-of-the = Leaks bring { $leaking } of the { $load } that come; { $carries }. Another { $below } is left in the roof before it gets to the vent. A sealed ceiling would bring { $vapor } in all.
the-ceiling-leaks-of = The ceiling leaks: { $leaking } of the { $load } that come are brought by its air. { $carries }. Seal the ceiling first: a vent that pulls more draws more through the leaks.
step-most-water-in-each = Most water in each m³ of outdoor air, from a table; and what is in it now.
step-for-each-m-of = For each m² of roof: gap (m) × speed (m/s) / rafter (m) × the water it can still take × 86 400 s.
g-m-day = { $power } g/m² day
x-600-ft-144 = 600 ft² × 144
x-60-ft = 60 ft
step-net-free-area-by = Net free area by 1/{ $ratio }.
step-half-of-it-low = Half of it low, over all eaves.
step-air-through-the-leaks = Air through the leaks at { $push } Pa, from the blower door; the kg of dry air in each m³; the g of water with each kg of that, in the room and at the most out there.
g-m-day-2 = { $most } g/m² day
step-of-that-air-is = { $long_share } % of that air is taken to seep; the rest gets to the vent space.
g-m-day-3 = { $straight } g/m² day
on-such-a-day = : on such a day it can keep up
at-best-it-keeps = : at best it keeps up
all-of-it-stays = : all of it stays
part-of-it-stays = : part of it stays
and-as-much-comes = , and { $share } as much comes: most of it stays

## The picture.

distance-from-the-eave = distance from the eave, { $long }
rh-of-the-moving = RH of the moving air, %
can-carry = can carry
brought-by-air = brought by air
by-vapor-2 = by vapor
alt-air-moves-a = Air moves { $way } a gap of { $gap } with { $speed }; its relative humidity goes from { $start } at the eave to { $end } at the ridge.
alt-in-of-12 = In { $short } of 12 months more water arrives than the gap can carry; the least it can carry is { $power }, the most that arrives { $loads }.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

-a-quarter = a quarter
-a-third = a third
-two-fifths = two fifths
fog-why = The air is nearly full. It had { $dry } left until full. Now it has { $damp }, { $dry2 } as much.
fog-ask = A { $gap } vent space can carry off { $before } at { $cold } and { $dry }. Now fog comes in, { $cold } and { $damp }. How much can it carry?
fog-more-vents-always-help-reply = Air moves as before, but it comes in nearly full.
fog-winter-fog-is-wet-air-reply = It can still take a little. It would bring water only to a face colder than its dew point.
fog-rh-alone-reply = What counts is the room left up to full, not the RH itself.
what-300-needs-why = 40 to 50 % of it must be high, near the ridge, the rest low. In zones 6 to 8 a class I or II retarder must be on the warm side. This is a code minimum, as adopted locally, not physics.
what-300-needs-ask = A vault of { $area } needs { $high } of net free area by 1/150. When may it be { $low } by 1/300?
what-300-needs-right = When 40 to 50 % is high and the rest low, plus a retarder in cold zones.
what-300-needs-more-vents-always-help = With any vents, as long as the area is there.
what-300-needs-one-in-300-is-physics = Always. 1/300 is what physics asks for.
what-300-needs-all-area-at-one-end = When all of it is at the ridge.
first-fix-why = { $brings } come and at most { $carries } can leave. Stop it at the source.
first-fix-ask = A house at { $ach } ACH50 has { $share } of its leaks in a { $area } vault. At 4 Pa they blow about { $brings } more into the vent space than air that cold can have. The vent can carry off { $carries }. First fix?
first-fix-right = Air-seal the ceiling.
first-fix-more-vents-always-help = A bigger ridge vent.
first-fix-more-vents-always-help-reply = More pull at the ridge can draw in more house air than it carries off.
first-fix-wet-roof-needs-vents = A powered fan in the vent.
first-fix-wet-roof-needs-vents-reply = A fan that pulls on a leaky ceiling draws more house air into the roof. It can also pull flue gas back down the chimney. Seal first.
first-fix-wet-roof-needs-vents-seems = A fan moves more air than the wind does.
first-fix-one-in-300-is-physics = Vents by 1/300, and it is done.
