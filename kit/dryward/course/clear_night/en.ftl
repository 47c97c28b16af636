### Lesson clear night.

## The page.

# $house is the R-value below the vent space.
given = outdoor air { $cold }, { $hours } hours of the same weather, { $area }, a house of { $room } below { $house }{ $snow }
# Follows the rest of what is given, or is empty.
given-snow = ; snow { $depth } deep, { $r }; a leaky ceiling as in a house of { $volume } with { $changes } air changes an hour at 50 Pa, { $share } of its leaks in this roof, at { $push } Pa; a vent space of { $gap }, { $rafter } long, with air at { $speed }
on-the-metal = On and under the metal
snow-none = bare
layer-1-us = R-1 under it
layer-1-si = RSI 0.18 under it
layer-4-us = R-4 under it
layer-4-si = RSI 0.7 under it
snow-leaky-us = 12 in. of snow, leaky ceiling
snow-leaky-si = 305 mm of snow, leaky ceiling
snow-thick-us = 12 in. of snow, leaky, R-60
snow-thick-si = 305 mm of snow, leaky, RSI 10.6
snow-tight-us = 12 in. of snow, airtight ceiling
snow-tight-si = 305 mm of snow, airtight ceiling
# The covering under snow; $amount melts from $area in the night.
snowed = Under the snow the covering is at { $covering }. { $melts ->
    [yes] In this night { $amount } of snow melt from { $area } of roof, run down and freeze at the cold eave
   *[no] No snow melts, so there is no water to freeze at the eave
}.
below-note = { $frosted } with frost on it
below = Lower face below the air, before frost
margin = Frost starts this far below
frost = Frost by morning
drip = { $snow ->
    [yes] Melts from { $area } of roof
   *[no] From { $area } of roof
}
top = Top of the covering
on-bare = On the bare covering it would be { $frost }.
# Where the air is stiller than the breeze the page starts with.
calm = The stiller the air, the colder the metal gets. But still air also brings it less vapor, so less frost may form than in a breeze.
# $full is where the outdoor air has all the vapor it can have; $state what the frost of the night comes to.
frosts = Before any frost it is { $below } colder under the covering than the air. { $full ->
    [yes] The air is at 100 %, so frost starts at once.
   *[no] Frost starts when it is { $margin } colder.
} So { $amount } form by morning, all from outdoor air: { $state ->
    [dry] too little to see
    [damp] enough to see and feel
   *[wet] enough to drip when it thaws
}.
warm = The lower face of the covering is as warm as the air or warmer, so no frost forms under it.
cold = Under the covering it is { $below } colder than the air. Frost needs it { $margin } colder: none forms.
step-lost = Bare covering at { $bare } K, before any frost: what it loses to a sky of { $sky } K.
# $wind is the wind in both units, or "si" where its slider has that of the arithmetic.
step-gained = { $wind ->
    [si] What the air at { $air } K gives it, and the house below: the two agree, so it stays there.
   *[other] What the air at { $air } K gives it, and the house below: the two agree, so it stays there. The wind is { $wind }.
}
step-frost-point = Frost point of the outdoor air: the temperature at which its vapor starts to frost.
step-margin = How far the covering may cool before that air frosts it.

step-rest = The air under the covering, were it shut off from it: heat from below (W/m²K) × room, heat that vent air takes × outdoors.
step-left = What comes up to a covering at 0 °C, less what goes out through the snow.
step-melt = { $melts ->
    [no] Nothing is left over: no snow melts.
   *[yes] What that heat melts in the night, at 334 kJ for each kg.
}

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
clouds-winter-fog-is-wet-air = More. Air that near to 100 % is wet air, and clouds bring more of it.
clouds-winter-fog-is-wet-air-reply = Clouds warm the roof from above. That counts more here.
clouds-roof-never-colder-than-air = The same. A roof is as cold as the air.
more-vent-air-why = The covering is { $under } below the air, and { $margin } below it the outdoor air frosts. New air brings new vapor, and some of it freezes while the metal stays that cold. Only air fast enough to warm the metal stops it.
more-vent-air-ask = On a clear night with a light breeze it is { $cold } and { $rh }. Someone opens the vents wider. What does that do to the frost under the covering?
more-vent-air-hint = How near is the outdoor air to 100 %, and how cold does the covering get? Look at the page.
more-vent-air-right = It can bring more frost.
more-vent-air-more-vents-always-help = It dries. More vents always help.
more-vent-air-roof-never-colder-than-air = Nothing. A roof is never colder than the air, so no frost forms.
drip-why = One such night can leave { $water } over the whole roof, and the sun sends it down at once.
drip-ask = After a clear night at { $cold } the sun hits a metal roof of { $area }. What must catch the drip?
drip-hint = Follow the melting frost. What lies below the covering, and where does it lead to?
drip-right = The outer membrane: lapped, sloped and drained at the eave.
drip-no-drops-no-problem = The insulation. It soaks it up, and with no drops to see there is no problem.
drip-no-drops-no-problem-reply = Wet insulation stays wet. The membrane must shed it.
drip-no-drops-no-problem-seems = A little water in thick insulation is soon out of sight.
drip-trust-the-trend-later = Nothing. Frost goes off as vapor by itself.
drip-trust-the-trend-later-reply = Sun melts it fast, and it drips.
drip-trust-the-trend-later-seems = On a dry winter day frost does go off as vapor, little by little.
fall-dew-why = Under a clear sky the metal gets { $under } colder than the air. Air at { $rh } leaves dew on what is { $margin } colder.
fall-dew-ask = A clear fall night with a light breeze, { $cold } and { $rh } outside. The house is airtight and dry. Is the underside of the metal wet by morning?
fall-dew-hint = Two numbers of the page say it: how far below the air the metal gets, and how far below dew starts.
fall-dew-right = Yes, with dew out of the outdoor air.
fall-dew-roof-never-colder-than-air = No. A roof cannot be colder than the air, so nothing settles on it.
fall-dew-roof-never-colder-than-air-reply = Under a cloudy sky that is nearly so. But here the metal is { $under } colder than the air, and dew needs { $margin }.
fall-dew-wet-roof-needs-vents = Only where rain gets in or vents are missing. A wet roof is a roof leak, or it needs vents.
fall-dew-wet-roof-needs-vents-reply = No rain fell, and it is the air of the vents that leaves the dew: { $margin } colder is enough, and the metal is { $under } colder.
twin-dams-ask = Two houses have the same gutters and the same { $inches } of snow, about { $snow }. Neither roof has a vent space or a leak. One has { $thin } below the deck, the other { $thick }. It is { $cold } outside and { $room } inside. Which one grows an ice dam?
twin-dams-hint = How much of all the R is snow, and so how warm is each deck? Count up from outdoors.
twin-dams-right = Only the one with { $thin }. Its snow melts from below.
twin-dams-why = The deck stands above outdoors by the snow's share of all the R. With { $thin } it would be at { $warm } if no snow melted, with { $thick } at { $cool }.
twin-dams-ice-dams-are-gutters = Both or neither. Ice dams come from the gutters and the vents, and those are alike.
twin-dams-ice-dams-are-gutters-reply = A gutter only shows where the water stops. Under { $thin } the deck would be at { $warm }, so snow melts. Under { $thick } it is at { $cool }, and none does.
twin-dams-freezing-outside = Neither. At { $cold } nothing melts.
twin-dams-freezing-outside-reply = The air is that cold, but the deck is not: snow keeps it warm. Under { $thin } it would be at { $warm }.

## The beats

stage-air = Air: { $temperature }
stage-metal = Metal: { $temperature }
stage-heat = Heat to the sky: { $heat }
stage-frost = Frost: { $amount }
stage-room = Room: { $temperature }
stage-outdoors = Outdoors: { $temperature }
stage-covering = Roof under the snow: { $temperature }
stage-no-snow = No snow on this roof, so it has no dam. { $frost ->
        [yes] But frost, from the sky.
       *[no] It has no frost either.
    } Choose one with snow.
stage-still-melts = { $thick ->
        [yes] More R alone: it still melts.
       *[no] Warm air leaks up: it melts.
    }
stage-scale = Amounts here are on { $area } of roof. { $number } dots a minute: { $amount } a day.
stage-melts = Melts: { $amount } a day
beat-first-say = Two nights with the same cold air and the same breeze. How cold does each roof get?
beat-first-ask = Bet on both before you see either.
beat-first-first = Clear sky
beat-first-second = Clouds
beat-first-clouds-ask = And under clouds?
beat-first-clouds-like = About as cold as the air.
beat-first-clouds-below = Far colder than the air.
beat-first-clouds-warmer = Warmer than the air, since the house heats it.
beat-first-clouds-like-reply = Clouds are nearly as warm as the air. The metal loses only { $less } to them and ends at { $cloudy }.
beat-first-clouds-below-reply = It was so under the clear sky. But clouds are only { $clouds } colder than the air, and the metal loses { $less } to them, not { $heat }. It ends at { $cloudy }.
beat-first-clouds-warmer-reply = A little heat does come from the house. But even to clouds the metal loses { $less }. It ends at { $cloudy }.
beat-first-answer = The air is at { $air } both times. Under the clear sky the metal is { $below } colder than that, under clouds { $near }.
beat-first-also = { $heat } go to the clear sky, { $less } to the clouds
beat-clouds-say = The house is airtight and dry, and frost grows under the metal. Bring in clouds.
beat-clouds-ask = Slide the sky nearer to the air until no frost forms.
beat-clouds-answer = The clear night left { $frost } on { $area } of roof, all of it from outdoor air. { $as-warm ->
        [yes] Under a sky as warm as the air none forms.
       *[no] Under a sky only { $sky } colder than the air none forms.
    }
beat-clouds-also = { $flux } before; frost starts { $margin } below the air
beat-dam-say = The same gutter, the same vents, the same snow. Which eave grows a dam of ice?
beat-dam-ask = Bet on both before you see either.
beat-dam-first = Leaky ceiling
beat-dam-second = Airtight ceiling
beat-dam-leaky-ask = The roof with the leaky ceiling:
beat-dam-leaky-gutter = A dam. Gutters and vents like these make one.
beat-dam-leaky-heat = A dam. Heat from below melts the snow.
beat-dam-leaky-none = No dam. It is too cold to melt.
beat-dam-leaky-gutter-reply = The ice does hang on the gutter. But the other roof has the same gutter and the same vents, and no ice. Here heat melts { $melts } of snow a day, and that water freezes at the cold eave.
beat-dam-leaky-heat-reply = Snow keeps the roof warm, and warm air leaks up to it: { $melts } melt a day, run down and freeze at the cold eave.
beat-dam-leaky-none-reply = It is { $air } outside. But under the snow this roof is at { $freezing }, and { $melts } melt a day.
beat-dam-tight-ask = And the one with the airtight ceiling?
beat-dam-tight-gutter = A dam. Gutters and vents like these make one.
beat-dam-tight-heat = A dam. Heat from below melts the snow.
beat-dam-tight-none = No dam. Nothing melts.
beat-dam-tight-gutter-reply = It is the same gutter, and it stays empty: the roof under the snow is at { $cold }, so there is no water to freeze.
beat-dam-tight-heat-reply = Some heat does come up through the insulation. It is too little here: the roof under the snow is at { $cold }.
beat-dam-tight-none-reply = Little heat comes up, and the vent air takes most of it. The roof under the snow is at { $cold }.
beat-dam-answer = Leaks melt { $melts } a day on { $area } of roof. Without them: none, with the same gutter, vents and snow. Stay out from under the ice, and off the roof.
beat-dam-also = { $flux } in { $hours } hours
beat-mend-say = The dam is back each winter. Change the roof until nothing melts.
beat-mend-ask = Choose a roof under the snow. Stay off an icy roof: the mending is done from below.
beat-mend-control = The roof under the snow
beat-mend-answer = From { $r } to { $more } alone: { $thick } a day still melt, not { $before }. Leaks sealed: none. So seal first, then add R.
