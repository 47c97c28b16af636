### Lesson clear night.


## The page.

too-little-to-see = too little to see
enough-to-see-and = enough to see and feel
enough-to-drip-when = enough to drip when it thaws
sky = Sky
wind = Wind
with-frost-on-it = { $frosted } with frost on it
below = Lower face below the air, before frost
margin = Frost starts this far below
frost = Frost by morning
from-600-ft2-of = From {"{"}600 ft2{"}"} of roof
top = Top of the covering
on-the-bare-covering = {" "}On the bare covering it would be { $bare }.
frost-starts-when-it = frost starts when it is { $room } colder
the-air-is-full = the air is full, so frost starts at once
before-any-frost-it = Before any frost it is { $below } colder under the covering than the air, and { $starts }: { $amount } form by morning, all from outdoor air, { $judge }.{ $bare }
the-lower-face-of = The lower face of the covering is as warm as the air or warmer, so no frost forms under it.
under-the-covering-it = Under the covering it is { $below } colder than the air. Frost needs it { $room } colder: none forms.{ $bare }
step-bare-covering-at-k = Bare covering at { $bare } K, before any frost: what it loses to a sky of { $sky } K.
step-what-the-air-at = What the air at { $air_kelvin } K gives it, and the house below: the two agree, so it stays there.
step-frost-point-of-the = Frost point of the outdoor air: the table read backward.
step-how-far-the-covering = How far the covering may cool before that air frosts it.

## The picture.

outdoor-air = outdoor air
lower-face-of-the = lower face of the covering
dew-or-frost-point = dew or frost point
the-face-is-colder = the face is colder
hours-after-sunset = hours after sunset
alt-coldest-hours-after = coldest { $coldest } hours after sunset with { $coldest2 }
alt-at-all-night = at { $coldest } all night
alt-for-about-hours = For about { $below } hours it is below the dew or frost point
alt-it-never-falls = It never falls below the dew or frost point
alt-a-night-hours = A night, { $hours } hours long. The lower face of the covering is { $coldest_at }; the air is then { $coldest }.
alt-of-water-settle = { $wet }; { $frost } of water settle.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

below-air-degf-difference = degF difference
clouds-why = Clouds are a warm lid. { $clear } under a clear sky, { $cloudy } with the clouds.
clouds-ask = It is a night with a light breeze, { $cold } and { $rh }. At midnight clouds come in. How much frost is under the covering by morning?
clouds-right = Less than under a clear sky.
clouds-winter-fog-is-wet-air = More. Clouds bring damp air.
clouds-winter-fog-is-wet-air-reply = Clouds warm the roof from above. That counts more here.
clouds-roof-never-colder-than-air = The same. A roof is as cold as the air.
more-vent-air-why = The covering is { $under } below the air, and { $margin } below it the outdoor air frosts. New air brings new vapor, and some of it freezes while the metal stays that cold. Only air fast enough to warm the metal stops it.
more-vent-air-ask = On a clear night with a light breeze it is { $cold } and { $rh }. Someone opens the vents wider. What does that do to the frost under the covering?
more-vent-air-right = It can bring more frost.
more-vent-air-more-vents-always-help = It always dries.
more-vent-air-roof-never-colder-than-air = Nothing. The covering is as warm as the air.
drip-why = One such night can leave { $water } over the whole roof, and the sun sends it down at once.
drip-ask = After a clear night at { $cold } the sun hits a metal roof of { $area }. What must catch the drip?
drip-right = The outer membrane: lapped, sloped and drained at the eave.
drip-no-drops-no-problem = The insulation. It soaks it up.
drip-no-drops-no-problem-reply = Wet insulation stays wet. The membrane must shed it.
drip-no-drops-no-problem-seems = A little water in thick insulation is soon out of sight.
drip-roof-never-colder-than-air = Nothing drips. Frost goes off as vapor.
drip-roof-never-colder-than-air-reply = Sun melts it fast, and it drips.
drip-roof-never-colder-than-air-seems = On a dry winter day frost does go off as vapor, little by little.
