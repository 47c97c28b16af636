### Lesson 3: which way vapor goes.

## The page

given = still air on both sides, and no hole between them
inside = Vapor pressure inside
outside = Vapor pressure outside
push = Push, inside to outside
way = Vapor goes
folk = The RH rule would say
# The way vapor goes, and the way that a rule of thumb would say.
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
warmth-said = { $way ->
        [none] from warm to cold: neither way
        [out] from warm to cold: out
       *[in] from warm to cold: in
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
beat-first-first = Winter day, { $first_at }
beat-first-second = Mild day, { $second_at }
beat-first-mild-ask = And on the mild day? Outside it is { $second_at } and { $first_rh } now.
beat-first-mild-in = In.
beat-first-mild-out = Out, from the warm room to the cooler air.
beat-first-mild-none = Neither way.
beat-first-mild-in-reply = The vapor pressure is { $second_pressure } outside and { $inside } in the room. The winter day has the same two RH numbers, and there it goes out.
beat-first-mild-out-reply = In winter it does go that way. But the vapor pressure is { $second_pressure } outside, and only { $inside } in the warmer room. So vapor goes in.
beat-first-mild-none-reply = A mild day looks like no day for vapor. But the vapor pressure is { $second_pressure } outside and { $inside } in the room, so vapor goes in.
beat-first-answer = In winter { $amount } a day go out through { $area } of ceiling: from { $indoor } to { $first_rh } RH.
beat-first-also = Winter: { $flux } out. Mild day: { $other } in.

beat-heat-say = The same heat, the same cooled room. Which way does vapor push?
beat-heat-ask = Bet on both before you see either.
beat-heat-first = Desert day, { $first_rh } RH
beat-heat-second = Gulf Coast day, { $second_rh } RH
beat-heat-desert-ask = Which way on the desert day?
beat-heat-desert-in = In, from the hot side to the cool side.
beat-heat-desert-out = Out, into the heat.
beat-heat-desert-none = Neither way.
beat-heat-desert-in-reply = On most hot days it does go in. But the vapor pressure is only { $first_pressure } in this heat, and { $inside } in the cool room. So vapor goes out.
beat-heat-desert-out-reply = The vapor pressure is { $inside } in the cool room and only { $first_pressure } in the hot air. Heat alone does not push.
beat-heat-desert-none-reply = Desert air has little to push with, and so the room wins: { $inside } in the room, { $first_pressure } outside. So vapor goes out.
beat-heat-coast-ask = And on the coast?
beat-heat-coast-in = In.
beat-heat-coast-out = Out, from { $indoor } to { $second_rh }.
beat-heat-coast-none = Neither way.
beat-heat-coast-in-reply = The vapor pressure is { $second_pressure } outside and { $inside } in the room. The desert is just as hot, and there vapor goes out.
beat-heat-coast-out-reply = { $indoor } is the bigger number. But { $second_rh } at { $first_at } is more vapor: { $second_pressure } outside and { $inside } in the room. So vapor goes in.
beat-heat-coast-none-reply = The RH numbers are nearly the same. But { $second_rh } at { $first_at } is { $second_pressure }, and { $indoor } at { $room } is { $inside }. So vapor goes in.
beat-heat-answer = From the cool room into the desert heat go { $amount } a day through { $area } of ceiling.
beat-heat-also = Desert: { $flux } out. Coast: { $other } in.

beat-floor-say = Two crawlspaces under the same warm room, and both are cooler. Which way does vapor push?
beat-floor-ask = Bet on both before you see either.
beat-floor-first = Bare earth, { $first_rh } RH
beat-floor-second = Covered earth, { $second_rh } RH
beat-floor-bare-ask = Which way over the bare earth?
beat-floor-bare-up = Up, into the warm room.
beat-floor-bare-down = Down, from warm to cold.
beat-floor-bare-none = Neither way. Warm air lies on top.
beat-floor-bare-up-reply = The vapor pressure is { $first_pressure } in the crawlspace and { $inside } in the room. So vapor goes up, from cool to warm.
beat-floor-bare-down-reply = Under a winter roof it does go that way. But the vapor pressure is { $first_pressure } in the cool crawlspace, and only { $inside } in the warm room. So vapor goes up.
beat-floor-bare-none-reply = The air may lie still. Vapor goes by itself: { $first_pressure } under the floor, { $inside } over it. So it goes up.
beat-floor-covered-ask = And over the covered earth?
beat-floor-covered-up = Up, from { $second_rh } to { $indoor }.
beat-floor-covered-down = Down, out of the warm room.
beat-floor-covered-none = Neither way. The cover stops it.
beat-floor-covered-up-reply = { $second_rh } is the bigger number. But at { $first_at } that is only { $second_pressure }, and the room has { $inside }. So vapor goes down.
beat-floor-covered-down-reply = The vapor pressure is { $inside } in the room and { $second_pressure } under the floor. So vapor goes down. Warmth did not do it: over the bare earth the same warm room gets vapor.
beat-floor-covered-none-reply = The cover holds back what the earth gives off, not what goes through the floor: { $inside } over it, { $second_pressure } under it. So vapor goes down.
beat-floor-answer = Over bare earth { $amount } a day come up through { $area } of floor. Over the cover vapor goes down.
beat-floor-also = Bare earth: { $flux } up. Covered: { $other } down.

beat-crawlspace-say = Where does the arrow turn: at the RH of the room, or at another?
beat-crawlspace-ask = You cover the bare earth. Slide the RH of the crawlspace down until vapor goes down too.
beat-crawlspace-control = Crawlspace RH
beat-crawlspace-answer = { $way ->
        [out] { $covered ->
            [yes] The earth is covered: { $amount } a day go down through { $area } of floor.
           *[no] The earth is bare: { $amount } a day go down through { $area } of floor.
        }
        [in] { $covered ->
            [yes] The earth is covered, and { $amount } a day still come up through { $area } of floor.
           *[no] The earth is bare: { $amount } a day come up through { $area } of floor.
        }
       *[none] The earth is covered, and there is almost no push.
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
crawlspace-warm-air-lid = Neither way. The warm air lies on top like a lid.
crawlspace-warm-air-lid-reply = Warm air on top holds no vapor down. The crawlspace has { $high } and the room { $low }, so vapor pushes up.
desert-why = Vapor pressure is { $inside } in the room and { $outside } in the heat.
desert-ask = A room is cooled to { $cool } and { $indoor }. Outside is desert, { $hot } and { $low }. Which way does vapor push?
desert-hint = Set both sides on the page. Which of the two vapor pressures is higher?
desert-right = Out, into the heat.
desert-warm-to-cold = In, from warm to cold.
desert-warm-to-cold-reply = The hot air has only { $outside }, the cool room has { $inside }. So vapor pushes out, from cool to hot.
desert-rules-cancel = Neither way. RH says out, heat says in, and they cancel out.
desert-rules-cancel-reply = Neither of them pushes. The room has { $inside }, the desert { $outside }, so vapor pushes out.
two-boards-why = Wood follows the RH beside it: at { $humid } it settles at about { $wet } MC, at { $low } at about { $dry }.
two-boards-ask = A board lies in a cold garage, { $cold } and { $humid }. Its twin lies in a warm room, { $warm } and { $low }. Which one ends up wetter?
two-boards-hint = Two numbers stand for each air. Which of them does wood go by? The words under "On the job" say it.
two-boards-right = The one in the garage.
two-boards-only-pressure-counts = The one in the room. The vapor pressure is higher there.
two-boards-only-pressure-counts-reply = It is higher: { $room }, against { $garage }. So vapor would go from the room to the garage. But wood follows the RH beside it: about { $wet } MC at { $humid }, about { $dry } at { $low }.
two-boards-no-drops-no-problem = Neither. There are no drops on them.
two-boards-no-drops-no-problem-reply = Wood takes up vapor with no drop to see. At { $humid } RH it settles at about { $wet } MC, at { $low } at about { $dry }.
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
equal-rh-cooler-is-damper = { $other ->
        [out] Out. The cooler air, inside, is the damper one.
       *[in] In. The cooler air, outside, is the damper one.
    }
equal-rh-cooler-is-damper-reply = { $way ->
        [out] At one RH the cooler air has less vapor: { $first } inside and { $second } outside, so vapor goes out.
       *[in] At one RH the cooler air has less vapor: { $first } inside and { $second } outside, so vapor goes in.
    }

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
