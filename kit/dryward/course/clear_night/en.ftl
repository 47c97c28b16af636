### Lesson clear night.

## The page.

# $house is the R-value below the vent space.
given = outdoor air { $cold }, { $hours } hours of the same weather, { $area } of roof, a house of { $room } below { $house }
below-note = { $frosted } with frost on it
below = Lower face below the air, before frost
margin = Frost starts this far below
frost = Frost by morning
drip = From { $area } of roof
top = Top of the covering
on-bare = On the bare covering it would be { $frost }.
# $full is where the outdoor air has all the vapor it can have; $state what the frost of the night comes to.
frosts = Before any frost it is { $below } colder under the covering than the air, and { $full ->
    [yes] the air is at 100 %, so frost starts at once
   *[no] frost starts when it is { $margin } colder
}: { $amount } form by morning, all from outdoor air, { $state ->
    [dry] too little to see
    [damp] enough to see and feel
   *[wet] enough to drip when it thaws
}.
warm = The lower face of the covering is as warm as the air or warmer, so no frost forms under it.
cold = Under the covering it is { $below } colder than the air. Frost needs it { $margin } colder: none forms.
step-lost = Bare covering at { $bare } K, before any frost: what it loses to a sky of { $sky } K.
step-gained = What the air at { $air } K gives it, and the house below: the two agree, so it stays there.
step-frost-point = Frost point of the outdoor air: the temperature at which its vapor starts to frost.
step-margin = How far the covering may cool before that air frosts it.

## The picture.

covering = lower face of the covering
dew-point = dew or frost point
frosting = the face is colder
hours-after-sunset = hours after sunset
temperature-axis = temperature, { $unit }
frost-bar = frost
alt-night = { $steady ->
    [yes] A night, { $hours } hours long. The lower face of the covering is at { $coldest } all night; the air is then { $air }.
   *[no] A night, { $hours } hours long. The lower face of the covering is coldest { $when } hours after sunset with { $coldest }; the air is then { $air }.
}
alt-water = { $wet ->
    [yes] For about { $below ->
        [one] { $below } hour
       *[other] { $below } hours
    } it is below the dew or frost point; { $frost } of water settle.
   *[no] It never falls below the dew or frost point; { $frost } of water settle.
}

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

clouds-why = Clouds are a warm lid. { $clear } under a clear sky, { $cloudy } with the clouds.
clouds-ask = It is a night with a light breeze, { $cold } and { $rh }. At midnight clouds come in. How much frost is under the covering by morning?
clouds-hint = What does the roof face at night, besides the air? What is there once the clouds come?
clouds-right = Less than under a clear sky.
clouds-winter-fog-is-wet-air = More. Clouds bring damp air.
clouds-winter-fog-is-wet-air-reply = Clouds warm the roof from above. That counts more here.
clouds-roof-never-colder-than-air = The same. A roof is as cold as the air.
more-vent-air-why = The covering is { $under } below the air, and { $margin } below it the outdoor air frosts. New air brings new vapor, and some of it freezes while the metal stays that cold. Only air fast enough to warm the metal stops it.
more-vent-air-ask = On a clear night with a light breeze it is { $cold } and { $rh }. Someone opens the vents wider. What does that do to the frost under the covering?
more-vent-air-hint = How near is the outdoor air to 100 %, and how cold does the covering get? Look at the page.
more-vent-air-right = It can bring more frost.
more-vent-air-more-vents-always-help = It always dries.
more-vent-air-roof-never-colder-than-air = Nothing. The covering is as warm as the air.
drip-why = One such night can leave { $water } over the whole roof, and the sun sends it down at once.
drip-ask = After a clear night at { $cold } the sun hits a metal roof of { $area }. What must catch the drip?
drip-hint = Follow the melting frost. What lies below the covering, and where does it lead to?
drip-right = The outer membrane: lapped, sloped and drained at the eave.
drip-no-drops-no-problem = The insulation. It soaks it up.
drip-no-drops-no-problem-reply = Wet insulation stays wet. The membrane must shed it.
drip-no-drops-no-problem-seems = A little water in thick insulation is soon out of sight.
drip-roof-never-colder-than-air = Nothing drips. Frost goes off as vapor.
drip-roof-never-colder-than-air-reply = Sun melts it fast, and it drips.
drip-roof-never-colder-than-air-seems = On a dry winter day frost does go off as vapor, little by little.
