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
# $against: what the vapor does that the two rules of thumb deny.
goes = { $way ->
        [out] Vapor goes out{ $against ->
            [rh] , from low RH to high RH
            [warmth] , from cold to warm
            [both] , from low RH to high RH and from cold to warm
           *[neither] {""}
        }: the outdoor air has { $push } less than the room air.
       *[in] Vapor goes in{ $against ->
            [rh] , from low RH to high RH
            [warmth] , from cold to warm
            [both] , from low RH to high RH and from cold to warm
           *[neither] {""}
        }: the room air has { $push } less than the outdoor air.
    }
step-inside = Vapor pressure inside.
step-outside = Vapor pressure outside.
step-push = The push: inside minus outside.

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
equal-rh-rh-drives-vapor-reply = { $rh } is a share, and warm air is full only with more. So vapor pressure is { $first } inside and { $second } outside, and the higher one pushes.
# $way is the wrong way.
equal-rh-dew-point-is-air-temperature = { $other ->
        [out] Out. The cooler side is nearer to its dew point.
       *[in] In. The cooler side is nearer to its dew point.
    }
equal-rh-dew-point-is-air-temperature-reply = { $way ->
        [out] How near air is to its dew point does not push. Vapor pressure does: { $first } inside and { $second } outside, so vapor goes out.
       *[in] How near air is to its dew point does not push. Vapor pressure does: { $first } inside and { $second } outside, so vapor goes in.
    }
equal-rh-dew-point-is-air-temperature-seems = Air near its dew point looks full and ready to push.

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
