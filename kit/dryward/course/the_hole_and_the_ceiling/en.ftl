### Lesson the hole and the ceiling.

## The page.

# $changes is a blower-door number, $share the part of the house's leaks that is up here.
given = room { $room }, cold face { $cold }, { $area } of ceiling, ridge { $height } above the floor, { $days } days. Of the hole's air, { $seeps } seeps. The house beside it has { $volume } and { $changes } air changes an hour at 50 Pa, with { $share } of its leaks up here
ceiling = Ceiling with its film
carried = Its air carries past
carried-note = { $carried }, if all of it cooled there
stays = Of that stays, about
stays-note = { $low } to { $high } of it; all where the air seeps through the fill
by-vapor = By vapor
by-vapor-note = { $by_vapor } through the ceiling
quarts = { $amount } quarts
liters = { $amount } L
times = Which leads
times-note = at { $low }: { $few }; at { $high }: { $much }
holes = A house at { $ach50 } ACH50
holes-text = { $holes } such holes
holes-note = { $share } of its { $size }, in the roof; { $height } of warm air push { $stack } Pa
winter = In one winter the hole's air carries { $carried } past the cold face and about { $stays } of it stay; { $vapor } come through the ceiling. { $compared }
# $first leads, or both are about the same; $much is who brings more than the roof can give back: neither, both, each alone.
compared = { $first ->
    [hole] The hole leads, { $times }
    [ceiling] The ceiling leads, { $times }
   *[both] Both are about the same
}, and { $much ->
    [none] together they are not more than the { $reserve } that this piece of roof can give back in summer
    [each] each alone is more than the { $reserve } that this piece of roof can give back in summer
    [hole] the hole alone is more than the { $reserve } that this piece of roof can give back in summer, however tight the rest is
    [ceiling] the ceiling alone is more than the { $reserve } that this piece of roof can give back in summer, however small the hole is
   *[together] only together are they more than the { $reserve } that this piece of roof can give back in summer
}.
step-air = Air through the hole of { $hole }: 0.6 of its area in cm², times the speed in m/s that the push gives, over 10 for liters.
step-waters = Water to each kg of dry air, in the room and at the most at the cold face: tables.
step-waters-both = { $inside } and { $held } g
step-carried = A m³ of room air has { $heavy } kg of dry air. It carries past what it could not keep at the cold face.
step-stays = About { $share } of the air seeps, cools on its way and leaves its part. This is assumed.
step-pressure = Vapor pressure of the room.
step-vapor = Vapor through the ceiling.
step-season = Over the ceiling, for the winter.
step-season-sum = { $through } g/m² day × { $ceiling } m² × 150 days / 1000
step-together = What stays of both, over the ceiling. From { $caution } on it is damp, from { $damage } on wet.
# Which of the two ways brings more, and how many times.
leads = { $first ->
    [hole] the hole, { $times }
    [ceiling] the ceiling, { $times }
   *[both] about the same
}

## The picture.

carried-line = carried past
air-pail = by air
vapor-pail = by vapor
stays-mark = stays
full = full: { $amount } { $unit }
vapor-line = by vapor
graph-across = ceiling with its film, { $symbol }
graph-up = { $symbol } in the season
push-on-the-house = push on the house
push-arrow = long = hard push
no-push = neutral level
alt-push = The house pushes air out at the ceiling with { $top } Pa; at the floor it is { $bottom } Pa.
alt-buckets = Two buckets on one scale. In the season the air of the hole carries { $carried } past the cold face; a line in its bucket marks the { $stays } that stay. Through the ceiling { $vapor } come by vapor.
alt-graph = The graph shows water over the permeance of the ceiling with its film; you are at { $inner_now }.

## The beats.

so-many-quarts = { $number } quarts
# How wide the joint between two boards is open: a part of an inch.
joint-open = { $system ->
        [us] { $parts ->
            [32] 1/32 in.
           *[64] 1/64 in.
        }
       *[si] { $parts ->
            [32] 0.8 mm
           *[64] 0.4 mm
        }
    }
stage-outdoors = Outdoors: { $temperature }
stage-inside = Indoors: { $temperature }
stage-room = Room: { $temperature }, { $humidity }
stage-cold = Cold face: { $temperature }
stage-hole = hole, { $area }
stage-by-air = by air: { $water }
stage-by-vapor = by vapor: { $water }
# $under where the neutral level is under the floor.
stage-blows-in = { $under ->
        [yes] The fan blows in: all leaks blow out.
       *[no] The fan blows in: more leaks out above.
    }
stage-taped = taped membrane
stage-holes = { $few ->
        [yes] leaks next to nothing
       *[no] leaks like { $holes } holes of { $area }
    }
# $mark is one mark of a jar.
stage-scale = Dots: { $number } a minute are { $amount } a day through { $area } of ceiling. Jars: what a winter leaves, { $mark } a mark.
beat-first-say = One hole of { $one }, or a sheet of ceiling around it. Which leaves more water?
beat-first-ask = Bet on both before you see either.
beat-first-first = Painted drywall, no film
beat-first-second = A { $perm } film behind it
beat-first-film-ask = Now a film of { $perm } hangs behind the drywall. The same hole goes through both. Which leaves more?
beat-first-film-ceiling = Still the ceiling.
beat-first-film-hole = Now the hole.
beat-first-film-ceiling-reply = The ceiling did lead with no film. The film cuts its vapor from { $bare } to { $film }. The hole still leaves { $hole }, so now it leads, { $film_times } times.
beat-first-film-hole-reply = The film cuts the vapor from { $bare } to { $film }, and does nothing for the hole: { $hole }. So the hole leads, { $film_times } times.
beat-first-answer = The same hole both times: { $hole }. The ceiling went from { $bare } to { $film }. So the lead turned around.
beat-first-also = Share of the air: { $share }, then { $film_share }. The hole carries { $carried } past the cold face. A tenth of that stays, an assumption.
beat-heights-say = A calm winter day. Where does air come in, and where out?
beat-heights-ask = Bet, then run a fan: slide the push down until the middle arrow turns.
beat-heights-control = Push at the ridge
beat-heights-floor-ask = With no fan, at the floor: in or out?
beat-heights-floor-in = In.
beat-heights-floor-out = Out.
beat-heights-floor-in-reply = In, { $floor } with no fan. That is the draft you feel.
beat-heights-floor-out-reply = Not down here: with no fan { $floor } come in.
beat-heights-ridge-ask = With no fan, at the ridge: in or out?
beat-heights-ridge-in = In. In winter the house leaks in everywhere.
beat-heights-ridge-out = Out.
beat-heights-ridge-in-reply = You feel what comes in low, not what leaves { $high } up. With no fan { $ridge } go out there, damp from the rooms.
beat-heights-ridge-out-reply = Out, { $ridge } with no fan. Warm air is lighter.
beat-heights-answer = The fan blows { $fan } out. The neutral level rose from { $was } to { $now }: below it all leaks blow in.
beat-heights-also = Push at the ridge now { $top }: { $out } go out there. Such a pull can draw flue gas back in: have the draft of every flue tested.
beat-barrier-say = Two ceilings. Is one of them a barrier to both, air and vapor?
beat-barrier-ask = Bet on both before you see either.
beat-barrier-first = Drywall, paint, all joints taped
beat-barrier-second = Plastic film, holes of { $hole }
beat-barrier-taped-ask = The drywall has { $taped_perm }, and no hole to speak of. What brings water to the roof?
beat-barrier-taped-vapor = Vapor, through the sheet.
beat-barrier-taped-air = Air, through leaks.
beat-barrier-taped-little = Hardly a thing. An air barrier is a vapor barrier.
beat-barrier-taped-vapor-reply = { $taped_vapor } a winter come through as vapor. No air leaks, and it is wet all the same.
beat-barrier-taped-air-reply = It is taped: next to no air gets by. But paint and board are open to vapor, and { $taped_vapor } a winter come through.
beat-barrier-taped-little-reply = It does stop the air, and that looks like the whole job. Vapor goes through the sheet itself: { $taped_vapor } a winter.
beat-barrier-plastic-ask = The plastic has { $plastic_perm }, and { $hole } of holes in it. What brings water to the roof?
beat-barrier-plastic-vapor = Vapor, through the sheet.
beat-barrier-plastic-air = Air, through the holes.
beat-barrier-plastic-little = Hardly a thing. A vapor barrier is an air barrier.
beat-barrier-plastic-vapor-reply = Plastic is made to stop just that: only { $plastic_vapor } come through it. The air of the holes leaves { $plastic_air }.
beat-barrier-plastic-air-reply = The air of the holes leaves { $plastic_air }. As vapor only { $plastic_vapor } come through.
beat-barrier-plastic-little-reply = It does stop vapor: { $plastic_vapor }. But air does not ask for perms, only for a hole. It leaves { $plastic_air }.
beat-barrier-answer = { $taped_vapor } by vapor through the taped sheet, { $plastic_air } by air through the plastic. Two jobs: each did one.
beat-barrier-also = Through the plastic as vapor: { $plastic_vapor }. The holes took hardly a thing off that job: for vapor the area counts.
beat-boards-say = Tongue-and-groove boards, joints as wide as a hair. Is that a ceiling that stops air?
beat-boards-ask = Bet on both before you see either.
beat-boards-first = Boards on the insulation
beat-boards-second = Boards over a taped membrane
beat-boards-bare-ask = { $area } of boards, each { $wide } wide, their joints open { $joint }, a push of 1 Pa. How much do all joints leak?
beat-boards-bare-tight = Next to nothing. Boards are a ceiling like any other.
beat-boards-bare-leaks = More than { $many } holes of { $one }.
beat-boards-bare-tight-reply = No joint lets you see through, so they look closed. But there are { $length } of them: together they leak like { $holes } holes of { $one }.
beat-boards-bare-leaks-reply = { $length } of joints leak { $air } of air, like { $holes } holes of { $one }.
beat-boards-taped-ask = The same boards, with a membrane taped at every edge above them. And now?
beat-boards-taped-tight = Next to nothing. The membrane is the air barrier.
beat-boards-taped-leaks = More than { $many } holes of { $one }.
beat-boards-taped-tight-reply = The joints are as open as before, and the air ends at the membrane.
beat-boards-taped-leaks-reply = The joints are as open as before. But the air must pass boards and membrane both, and the tape shuts that way.
beat-boards-answer = { $length } of hair-wide joints: { $holes } holes of { $one }. Over a taped membrane: next to none.
beat-boards-also = The gaps add up to { $gaps }. But each is { $joint } wide and { $deep } deep, and such a slot drags hard on its air. In a winter that air carries { $past } past the cold face. { $tenth } stay if a tenth of it seeps, all of it where it must go through the fill.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

# $what is halved: the hole, or the humidity.
halved-why = { $what ->
    [hole] At the same push flow goes with area: { $half } is half of { $whole }.
   *[humidity] { $system ->
            [us] Each pound of dry air has { $moist } grains of vapor with it at { $rh }, { $drier } at { $half }, and can keep { $held } at the cold face. What is over that falls, and so does what stays: from { $before } to { $after }.
           *[si] Each kilogram of dry air has { $moist } g of vapor with it at { $rh }, { $drier } at { $half }, and can keep { $held } at the cold face. What is over that falls, and so does what stays: from { $before } to { $after }.
        }
}
halved-ask = { $what ->
    [hole] In a winter the air of a hole of { $area } at { $push } Pa carries about { $whole } of water past the cold face, over and above what it can keep there. Half of the hole gets sealed and the push stays. How much is it now?
   *[humidity] A leak leaves about { $before } of water at a { $cold } sheathing in a winter, with { $rh } indoors at { $room }. Indoor RH is brought down to { $half }. How much is it now?
}
halved-hint = { $what ->
    [hole] With what does the flow of air go, at the same push? Halve the hole on the page.
   *[humidity] Work out for both: how much vapor comes, and how much can there be at the cold sheathing?
}
halved-just-the-same-reply = Half of the hole is half of the air, whatever the rest of the ceiling is like: { $half }.
halved-just-the-same-seems = As long as a gap is left, sealing looks useless.
halved-half-is-closed-reply = The other half still leaks, at the same push: { $half }.
halved-counts-air-not-water-reply = The same air leaks, but with half the vapor in it. What stays falls to { $after }.
which-test-why = Blow or draw at 50 Pa while the film can still be reached, and watch the smoke at each joint.
which-test-ask = A house tests at { $ach } ACH50, { $cfm50 } at 50 Pa, about { $everyday } in everyday use. You want to find where the ceiling leaks. Which test?
which-test-hint = What do you want to find? Which of these shows just that?
which-test-right = A blower door with smoke, before the drywall goes up.
which-test-wrong-tool = A moisture meter in July.
which-test-wrong-tool-reply = In July the wood has dried. The leak shows in winter, or with smoke.
which-test-vapor-barrier-is-air-barrier = A perm test of the film. A vapor barrier is an air barrier.
which-test-house-must-breathe = No test. A house has to breathe, and those leaks let it.
which-test-house-must-breathe-reply = People breathe. A fan brings them air without wetting the roof.
which-test-house-leaks-in-everywhere = Wait for a draft under the ceiling. In winter the house leaks in everywhere.
which-test-house-leaks-in-everywhere-reply = In winter air comes in low and leaves high. The ceiling leaks outward, so no draft is felt there.
which-test-vapor-barrier-is-air-barrier-reply = A perm test says what vapor does in the sheet. Air goes through joints and holes, and no perm shows them.
big-ceiling-why = The hole leaves { $hole }, and { $ceiling } come through the ceiling as vapor. The area makes it so.
big-ceiling-ask = A vault has { $area } of painted drywall with a film of { $film } behind it, and one hole of { $one }. The room is at { $room } and { $rh }, the cold face at { $cold }, the push is 1 Pa, and a tenth of the air seeps. Which leaves more water in a winter of 150 days?
big-ceiling-hint = Work out both, each by weight. For which of the two does the area count?
big-ceiling-right = The ceiling, about { $times } times as much.
big-ceiling-one-path-does-it-all = The hole. Moisture moves by air, 98 percent of it, and perms never matter.
big-ceiling-forgets-what-goes-by = The hole. All that its air carries past the cold face stays there.
big-ceiling-forgets-what-goes-by-reply = Most of that air goes straight by and keeps its water. The hole leaves { $hole }, the ceiling lets { $ceiling } through.
upstairs-why = { $at } up the house pushes outward with { $push } Pa. Warm air is lighter than cold, so it comes in low and goes out high.
upstairs-ask = A house is { $height } high from the ground floor to the ridge. It is { $room } inside and { $cold } outside, with no wind and no fan. You hold a smoke pencil to a crack by an upstairs window, { $at } up. Where does the smoke go?
upstairs-hint = Think of the house as a chimney. Are you under its neutral level, or over it?
upstairs-right = Out. That high up the house pushes outward.
upstairs-house-leaks-in-everywhere = Into the room. In winter the house leaks in everywhere.
upstairs-house-leaks-in-everywhere-reply = You feel what leaks in at the floor. { $at } up the house pushes outward with { $push } Pa.
upstairs-no-push-without-wind = Nowhere. Without wind no air goes through a house.
two-barriers-why = { $length } of joints leak like { $holes } holes of { $one }: each is a narrow slot that drags on its air. And air goes around paper that is stapled with no tape.
two-barriers-ask = A vault has { $area } of tongue-and-groove boards, each { $wide } wide, with joints open { $joint }. Over them lie batts with paper facing, stapled to the rafters. The push is 1 Pa. What of that stops the air?
two-barriers-hint = Add up the length of all joints, in the boards and in the paper. What closes them?
two-barriers-right = Neither. The joints of the boards alone are about { $holes } holes of { $one }.
two-barriers-boards-are-a-ceiling = The boards. They are a ceiling like any other.
two-barriers-boards-are-a-ceiling-reply = They look closed from below. But { $length } of joints leak like { $holes } holes of { $one }.
two-barriers-vapor-barrier-is-air-barrier = The paper. A vapor barrier is an air barrier.
two-barriers-vapor-barrier-is-air-barrier-reply = The paper does slow vapor. Air goes around each loose edge of it, and through { $length } of joints below: about { $holes } holes of { $one }.
# $state is what such a winter comes to.
task-outcome = About { $stays } stay from the hole, and { $through } come through the ceiling. Together that is { $found }: { $state }.
