### Lesson 3: which way vapor goes.

## The page

given = still air on both sides, and no hole between them
inside = Vapor pressure inside
outside = Vapor pressure outside
push = Push, inside to outside
way = Vapor goes
folk = The RH rule would say
# The way vapor goes, and the way the RH rule would say.
way-said = { $way ->
        [none] hardly at all
        [out] out
       *[in] in
    }
folk-said = { $way ->
        [none] neither way
        [out] out
       *[in] in
    }
almost-no-push = Almost no push: { $push } either way, whatever the two RH numbers say.
# $against: what the vapor does that the two rules of thumb deny; $floor: whether a crawlspace is the other side.
goes = { $way ->
        [out] Vapor goes { $floor ->
            [yes] down
           *[no] out
        }{ $against ->
            [rh] , from low RH to high RH
            [warmth] , from cold to warm
            [both] , from low RH to high RH and from cold to warm
           *[neither] {""}
        }: the { $floor ->
            [yes] crawlspace
           *[no] outdoor
        } air has { $push } less than the room air.
       *[in] Vapor goes { $floor ->
            [yes] up
           *[no] in
        }{ $against ->
            [rh] , from low RH to high RH
            [warmth] , from cold to warm
            [both] , from low RH to high RH and from cold to warm
           *[neither] {""}
        }: the room air has { $push } less than the { $floor ->
            [yes] crawlspace
           *[no] outdoor
        } air.
    }
step-inside = Vapor pressure inside.
step-outside = Vapor pressure outside.
step-push = The push: inside minus outside.

## The beats

beat-first-say = The same two RH numbers on two days. Which way does vapor push?
beat-first-ask = Take an arrow in the picture or in the list. Bet on both days before you see either.
beat-first-first = Winter day, { $cold }
beat-first-second = Mild day, { $warm }
beat-first-mild-ask = And on the mild day? Outside it is { $warm } and { $high } now.
beat-first-mild-in = In.
beat-first-mild-out = Out, from the warm room to the cooler air.
beat-first-mild-none = Neither way.
beat-first-mild-in-reply = The vapor pressure is { $outside } outside and { $inside } in the room. The winter day has the same two RH numbers, and there it goes out.
beat-first-mild-out-reply = In winter it does go that way. But the vapor pressure is { $outside } outside, and only { $inside } in the warmer room. So vapor goes in.
beat-first-mild-none-reply = A mild day looks like no day for vapor. But the vapor pressure is { $outside } outside and { $inside } in the room, so vapor goes in.
beat-first-answer = In winter { $amount } a day go out through { $area } of ceiling: from { $low } to { $high } RH.
beat-first-also = Winter: { $flux } out. Mild day: { $other } in.

beat-heat-say = The same heat, the same cooled room. Which way does vapor push?
beat-heat-ask = Bet on both before you see either.
beat-heat-first = Desert day, { $low } RH
beat-heat-second = Gulf Coast day, { $high } RH
beat-heat-desert-ask = Which way on the desert day?
beat-heat-desert-in = In, from the hot side to the cool side.
beat-heat-desert-out = Out, into the heat.
beat-heat-desert-none = Neither way.
beat-heat-desert-in-reply = On most hot days it does go in. But the vapor pressure is only { $desert } in this heat, and { $inside } in the cool room. So vapor goes out.
beat-heat-desert-out-reply = The vapor pressure is { $inside } in the cool room and only { $desert } in the hot air. Heat alone does not push.
beat-heat-desert-none-reply = Desert air has little to push with, and so the room wins: { $inside } in the room, { $desert } outside. So vapor goes out.
beat-heat-coast-ask = And on the coast?
beat-heat-coast-in = In.
beat-heat-coast-out = Out, from { $indoor } to { $high }.
beat-heat-coast-none = Neither way.
beat-heat-coast-in-reply = The vapor pressure is { $coast } outside and { $inside } in the room. The desert is just as hot, and there vapor goes out.
beat-heat-coast-out-reply = { $indoor } is the bigger number. But { $high } at { $hot } is more vapor: { $coast } outside and { $inside } in the room. So vapor goes in.
beat-heat-coast-none-reply = The RH numbers are nearly the same. But { $high } at { $hot } is { $coast }, and { $indoor } at { $cool } is { $inside }. So vapor goes in.
beat-heat-answer = From the cool room into the desert heat go { $amount } a day through { $area } of ceiling.
beat-heat-also = Desert: { $flux } out. Coast: { $other } in.

beat-crawlspace-say = The cool crawlspace pushes vapor up into the warm room. Turn the arrow around.
beat-crawlspace-ask = You cover the bare earth. Slide the RH of the crawlspace down until vapor goes down too.
beat-crawlspace-control = Crawlspace RH
beat-crawlspace-answer = { $way ->
        [out] Now { $amount } a day go down through { $area } of floor.
        [in] Now { $amount } a day come up through { $area } of floor.
       *[none] Now there is almost no push.
    } The arrow turns at { $turn }, not at the { $indoor } of the room.
beat-crawlspace-also = { $flux }. That is only which way vapor goes: the wood of the floor still follows the RH beside it.

## The scene

air-of-crawlspace = Crawlspace: { $temperature }, { $humidity }
ground-cover = Ground cover
push-here = { $way ->
        [none] Almost no push: { $push }
       *[other] Push: { $push }
    }
# $floor: whether vapor goes through a floor, not a ceiling.
dots-stand-for = Blue columns: vapor pressure. { $number } dots a minute: { $amount } a day through { $area }. { $floor ->
        [yes] The floor is OSB of { $permeance }
       *[no] Of the ceiling only the painted drywall counts: { $permeance }
    }.

## The questions

crawlspace-why = Vapor pressure is { $high } in the crawlspace and { $low } in the room.
crawlspace-ask = The crawlspace is { $below } and { $below_rh }, the room above is { $above } and { $above_rh }. Which way does vapor push?
crawlspace-hint = Put the crawlspace outside and the room inside on the page. Which of the two vapor pressures is higher?
crawlspace-right = Up into the room.
crawlspace-warm-to-cold = Down, from warm to cold.
crawlspace-warm-to-cold-reply = The warm room has { $low }, the cool crawlspace has { $high }. So vapor pushes up, from cold to warm.
crawlspace-heating-dries-the-air = Neither way. Heat holds the damp down.
crawlspace-heating-dries-the-air-reply = Warm air on top holds no vapor down. The crawlspace has { $high } and the room { $low }, so vapor pushes up.
crawlspace-heating-dries-the-air-seems = Warm air lies on top and stays there.
no-push-why = { $first } against { $second }: a push of only { $push }.
no-push-ask = One room is { $warm } and { $warm_rh }, the next is { $cool } and { $cool_rh }. How strong is the push of the vapor, and which way?
no-push-hint = Leave RH and warmth aside. Work out the two vapor pressures: how far apart are they?
no-push-right = Almost none.
no-push-rh-drives-vapor = Strong, from { $cool_rh } to { $warm_rh }.
no-push-rh-drives-vapor-reply = The RH numbers lie far apart, the vapor pressures do not: { $first } and { $second }. That is a push of only { $push }.
no-push-warm-to-cold = Strong, from the warm room to the cool one.
no-push-warm-to-cold-reply = One room is warmer, but it has hardly more or less vapor: { $first } against { $second }. That is a push of only { $push }.
equal-rh-why = Vapor pressure is { $first } inside and { $second } outside.
equal-rh-right = { $way ->
        [out] Out.
       *[in] In.
    }
equal-rh-ask = It is { $inside } and { $rh } inside, { $outside } and { $rh } outside. Which way does vapor push?
equal-rh-hint = { $rh } of what? Set both sides on the page and look at the two vapor pressures.
equal-rh-rh-drives-vapor = Neither way. The RH is equal.
equal-rh-rh-drives-vapor-reply = { $rh } is a share, and where it is warm there can be more vapor. So vapor pressure is { $first } inside and { $second } outside, and the higher one pushes.
# $way is the wrong way.
equal-rh-dew-point-is-air-temperature = { $other ->
        [out] Out. The cooler side is nearer to its dew point.
       *[in] In. The cooler side is nearer to its dew point.
    }
equal-rh-dew-point-is-air-temperature-reply = { $way ->
        [out] How near air is to its dew point does not push. Vapor pressure does: { $first } inside and { $second } outside, so vapor goes out.
       *[in] How near air is to its dew point does not push. Vapor pressure does: { $first } inside and { $second } outside, so vapor goes in.
    }
equal-rh-dew-point-is-air-temperature-seems = Air near its dew point looks as if it were ready to push.

## The picture

key-vapor = vapor: wider = more push
room-inside = inside
room-outside = outside
axis-temperature = temperature, { $unit }
axis-vapor-pressure = vapor pressure, { $unit }
alt-no-arrow = Both vapor pressures are the same: there is no arrow.
alt-rooms = Two rooms with a board between them.
alt-inside = Inside: { $temperature }, { $humidity }, vapor pressure { $pressure }.
alt-outside = Outside: { $temperature }, { $humidity }, vapor pressure { $pressure }.
alt-arrow = { $way ->
        [out] The arrow points from inside to outside, pushed by { $push }.
       *[in] The arrow points from outside to inside, pushed by { $push }.
    }
