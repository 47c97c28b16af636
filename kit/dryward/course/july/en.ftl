### Lesson july.

## The page.

# $spring and $yard are airs, $roof the insulation and the drywall.
given = room at { $humidity }, { $roof }. The spring day that dries has { $yard } outdoors and { $spring } in the room
given-ground = ground at { $ground }
# $states says which inner layers are dry, damp and wet: whole sentences.
both-months = The worse of both months. { $states }
roof = Roof and inner layer
roof-plastic = vented, plastic (0.06 perm)
roof-plastic-si = vented, plastic (sd 58 m)
roof-three-perm = vented, film (3 perm)
roof-three-perm-si = vented, film (sd 1.2 m)
roof-variable = vented, variable film
roof-open-sheet = vented, open sheet by mistake
roof-none = vented, drywall alone
roof-foam = no vent, foam above deck
outdoors = Outdoors, or wet wood in the sun
outdoors-temperature = Temperature outdoors, or of wet wood in the sun
task-needs-a-film = This task is about the vented roof; choose one of its inner layers.
sun = Wet wood in the sun, at { $temperature }.
push = Push, outside to inside
behind = Behind the inner layer
gain = Water gained
into-room = Vapor into the room
into-room-note = { $load } on { $area }
into-room-outward = it goes outward
spring-inward = Spring: wood dries inward
spring-inward-note = and out { $outward }
# What is pushed outward or inward comes from the outdoor air, or with $sun from soaked wood.  $water is where water
# gathers, or how dry the roof is: a piece of a sentence.
outward = { $sun ->
    [yes] Soaked wood in the sun has { $push } less vapor pressure than the room: the push is outward, and { $water }.
   *[no] The outdoor air has { $push } less vapor pressure than the room: the push is outward, and { $water }.
}
inward-gathers = { $sun ->
    [yes] Soaked wood in the sun pushes vapor inward with { $push }, and { $water }.
   *[no] The outdoor air pushes vapor inward with { $push }, and { $water }.
}
inward = { $sun ->
    [yes] Soaked wood in the sun pushes vapor inward with { $push }; behind the inner layer it is { $behind }, and { $room } reach the room: { $water }.
   *[no] The outdoor air pushes vapor inward with { $push }; behind the inner layer it is { $behind }, and { $room } reach the room: { $water }.
}
step-outside = Vapor pressure outside.
step-inside = Vapor pressure in the room.
step-push = The push: outside minus inside.
step-dew-point = Dew point outside: the temperature at which this is the most vapor there can be.
step-behind = Temperature behind the inner layer.
step-most = The most vapor pressure there is { $most }. On the vapor line:

## The picture.

vapor-flow = vapor on its way
# Vapor out of the roof or into it, at the right and at the left of the drawing.
alt-ways = { $outside } { $out ->
    [yes] leave to outdoors
   *[no] come in from outdoors
} and { $room } { $leave ->
    [yes] leave the room
   *[no] enter the room
} as vapor.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

colder-room-why = { $damp ->
    [no] The plastic got colder. Its outer face goes from { $first } to wet, { $wet }.
   *[yes] The plastic got colder. Its outer face goes from { $first } to wet, { $wet }. At { $first } it was damp: { $reason }.
}
colder-room-ask = Plastic is on the inside, and it is { $hot } and { $humid } outside. The air conditioning goes from { $high } to { $low }. What happens on the outer face of the plastic?
colder-room-hint = How cold is the outer face of the plastic, before and after? What is the dew point of the outdoor air?
colder-room-right = It gets wet.
colder-room-barrier-always-inside = Nothing. The plastic is on the inside, where it belongs.
colder-room-barrier-always-inside-reply = It is on the inside, and there the room cools it. In July the vapor comes from outside. At { $low } in the room the back of the plastic takes up { $wet }.
colder-room-wrong-side-of-the-film = It dries. Air conditioning dries.
colder-room-wrong-side-of-the-film-reply = It dries the room, not the cavity behind the plastic.
summer-water-why = The outdoor dew point is { $dew }, above { $back }. So it depends on the layers.
summer-water-ask = Outside it is { $hot } and { $humid }. The back of the drywall is { $back }. Can water form there?
summer-water-hint = Hold the back of the drywall against the dew point of the outdoor air.
summer-water-right = Yes, if the outdoor vapor can get there.
summer-water-summer-air-dries = No. In summer the air dries things.
summer-water-summer-air-dries-reply = It dries what is warmer than its dew point. That is { $dew } here, and the back of the drywall is at { $back }.
summer-water-wrong-side-of-the-film = Only if the room is humid.
summer-water-wrong-side-of-the-film-reply = The vapor comes from outside. The room only makes the face cold.
spring-drying-why = Toward the room: { $bare } with no film, { $film } with the variable film, { $plastic } with plastic.
spring-drying-ask = It is spring, { $mild } and 60 % outside, { $room } and { $rh } inside. Wood on the inside of the OSB is wet. Which inner layer lets it dry toward the room?
spring-drying-hint = For each of the three: how open is the way from the wet wood to the room?
spring-drying-right = The variable film, or no film.
spring-drying-barrier-always-inside = Plastic. It belongs inside and keeps water out.
spring-drying-barrier-always-inside-reply = It keeps water in just as well: { $plastic } inward, not { $film }.
spring-drying-wet-lumber-dries-itself = All the same. Wet wood dries by itself once it is warm inside.
spring-drying-wet-lumber-dries-itself-reply = It is as warm behind all three, and outward it loses { $outward } in each. Toward the room it is { $film } behind the film and { $plastic } behind plastic.

which-day-why = The first day's dew point is { $first_dew }, above the { $face } of the floor. The second day's is { $second_dew }, below it.
which-day-ask = A basement floor is { $face } in July. One day it is { $first } and { $first_rh } outside, the next day { $second } and { $second_rh }. You open the windows to dry the floor. On which day does that work?
which-day-hint = Set each day on the page, and read its dew point in the arithmetic. Hold it against the floor.
which-day-right = On the second day only.
which-day-summer-air-dries = On either day. Open up in summer and it airs out.
which-day-summer-air-dries-reply = On the first day the air is { $first_humid } of the most there can be at the floor. It leaves water there.
which-day-rh-alone = On the first day only. Its RH is lower.
which-day-rh-alone-reply = Lower RH, but more vapor: the dew point of the first day is { $first_dew }, and the floor is at { $face }.
cooler-why = Vapor goes from the shop, { $shop_dew } dew point, into the cold. A film on the cooler's side is at { $cold }: it takes up { $wet } on its back. On the shop's side it takes up none.
cooler-ask = A walk-in cooler at { $cold } and { $cold_rh } stands in a shop at { $shop } and { $shop_rh }. Its walls have plastic on one face and an open sheet on the other. On which face does the plastic belong?
cooler-hint = Which side has the higher vapor pressure, all year? Hold the dew point of that air against both faces.
cooler-right = On the face toward the shop.
cooler-barrier-always-inside = On the inside, toward the cooler. The barrier always goes inside.
cooler-barrier-always-inside-reply = Here the damp side is outside, all year. On the inside the plastic is at { $cold }, and the shop's air has a dew point of { $shop_dew }. It takes up { $wet }.
cooler-two-barriers-twice-as-good = On both faces. Two hold more than one.
cooler-two-barriers-twice-as-good-reply = Toward the shop it does the work: no water gathers there. One more toward the cooler only keeps in what a leak lets in.

## The beats

push-is = { $inward ->
        [yes] Push in: { $push }
       *[no] Push out: { $push }
    }
# What stands behind the drywall, in the round glass.
inner-layer = { $inner ->
        [plastic] Plastic
        [three-perm] { $system ->
                [us] Film, 3 perm
               *[si] Film, sd 1.2 m
            }
        [variable] Variable film
        [open-sheet] Open sheet
       *[none] Drywall alone
    }
# $state is dry, damp or wet.
most-humid = Most humid face: { $humidity }, { $state }
in-the-deck = { $water } in the deck
dries = { $way ->
        [in] To the room: { $amount } a day
       *[out] Outward: { $amount } a day
    }
dry-in = Dry in { $days } days
air-comes-in = Air coming in: { $temperature }, { $humidity }
ground-is = Ground: { $temperature }
at-the-ground = { $wet ->
        [yes] At the ground it would be { $humidity }: wet
       *[no] At the ground it is { $humidity }: it dries
    }

beat-first-say = One roof, plastic inside, in July and in January. Which face gets wet first in July?
beat-first-ask = Bet on both before you see either.
beat-first-first = July
beat-first-second = January
beat-first-january-ask = And in January?
beat-first-january-back = The outer face of the plastic.
beat-first-january-back-reply = So it is in July. In January the push turns round, { $outward } outward, and the plastic holds the room's vapor back while it is warm. No face is over { $most }.
beat-first-january-deck = The outer layer over the insulation, since it is cold there.
beat-first-january-deck-reply = It is the coldest face. But the plastic lets next to no vapor come, and the open sheet lets it go. No face is over { $most }.
beat-first-january-none = No face.
beat-first-january-none-reply = The push is { $outward } outward, and the plastic stops it on the warm side. No face is over { $most }. That is where the rule comes from.
beat-first-answer = The same plastic: no water in January, and in July { $amount }.
beat-first-also = Push: { $outward } outward in January, { $inward } inward in July. On the back of the plastic: { $flux }.

beat-both-say = A roof has both months. Now the room is { $warm } in July, and January is { $cold }.
beat-both-ask = Choose an inner layer until both months say dry.
beat-both-first = July
beat-both-second = January
beat-both-control = Inner layer
beat-both-answer = Dry in both: no face is over { $july } in July, none over { $january } in January. In July { $amount } go on into the room.
beat-both-also = Damp begins at { $limit } there, where mold can start if it stays so for weeks. In a room at { $cool } this layer is at { $before } in July. Into the room: { $flux }, for the air conditioner to take out.

beat-spring-say = A leak left { $leak } in { $area } of OSB deck. Is it gone in { $days } spring days?
beat-spring-ask = Bet on both before you see either.
beat-spring-first = Plastic inside
beat-spring-second = Variable film inside
beat-spring-plastic-ask = The town is cold, and the plastic is inside. Is the deck dry by then?
beat-spring-plastic-yes = Yes. In a cold town plastic inside is right.
beat-spring-plastic-yes-reply = It stops the room's vapor in winter, and it stops the leak's water too. To the room go { $plastic_inward } a day: { $plastic } days in all.
beat-spring-plastic-no = No. It takes longer.
beat-spring-plastic-no-reply = Outward go { $outward } a day, to the room only { $plastic_inward }: { $plastic } days in all.
beat-spring-film-ask = And with the variable film?
beat-spring-film-yes = Yes.
beat-spring-film-yes-reply = The same { $outward } a day go outward, and { $film_inward } to the room: { $film } days in all.
beat-spring-film-no = No. It takes longer.
beat-spring-film-no-reply = It would, if outward were the only way. But the damp opens the film, and { $film_inward } a day go to the room: { $film } days in all.
beat-spring-answer = Behind the plastic the deck needs { $plastic } days, behind the film { $film }.
beat-spring-also = In January, { $cold } outside and { $damp } in the room, the film lets { $winter } a day into this deck and the plastic none. A spring day takes { $film_inward } back out through it.

beat-air-say = Two hot summer days, and the vents are open. What does the air do to the ground?
beat-air-ask = Bet on both before you see either.
beat-air-first = A humid day
beat-air-second = A dry day
beat-air-humid-ask = Under the house the ground is at { $ground }. What does the humid day do to it?
beat-air-humid-drier = It gets drier. Summer air airs things out.
beat-air-humid-drier-reply = The air is warm, and the ground is not. The dew point is { $humid_dew }, and the ground is at { $ground }: water gathers there.
beat-air-humid-wetter = It gets wetter.
beat-air-humid-wetter-reply = The dew point is { $humid_dew }, above the { $ground } of the ground.
beat-air-dry-ask = And the dry day, just as hot?
beat-air-dry-drier = It gets drier.
beat-air-dry-drier-reply = The dew point is { $dry_dew }, below the { $ground } of the ground.
beat-air-dry-wetter = It gets wetter.
beat-air-dry-wetter-reply = It is as hot, and it has less vapor. The dew point is { $dry_dew }, below the { $ground } of the ground: it dries.
beat-air-answer = From each { $volume } the humid day leaves up to { $humid_water } on the ground. The dry day takes up as much as { $dry_water }.
beat-air-also = The same holds for a cold duct, a basement floor or a cooled room: { $humid_dew } and { $dry_dew } are what counts.
