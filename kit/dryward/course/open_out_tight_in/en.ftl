### Lesson 7: open out, tight in.

## The page

# $roof is its insulation and its drywall.
given = room { $room }, outdoor air at { $humidity }, { $roof }
gain = Water gained
face-humidity = Humidity at the outer face
ratio = The outside is
ratio-note = as the inside
needed = For no gain, outside
needed-any = any
needed-over = over { $most }
needed-any-note = even a tight one
needed-note = { $compared } as the inside
needed-over-note = first lower the humidity
dries = Once wet, it dries in
days = { $days } days
# $spring: how warm it is outdoors.
dries-note = at one spring day's rate, { $spring } out
# $compared: "just as open", "3 times as open" or "3 times as tight", from below.
stop-it = To stop it the outside must have { $balance }: { $compared } as the inside.
nothing-stops-it = No outer layer stops it at this humidity.
# $little: whether it is too little to count; $stop is one of the two sentences above.
gains = { $little ->
        [yes] This roof gains { $gain }, too little to count, in this weather. { $stop }
       *[no] This roof gains { $gain } in this weather. { $stop }
    }
# $dry: the state is dry; otherwise $settles says where the roof settles.
gains-nothing-ever = This roof gains nothing in this weather, and even a tight outside would gain nothing.{ $dry ->
        [yes] {""}
       *[no] {" "}But { $settles }.
    }
# A larger sd is tighter, so that in SI the outside needs so much or less.
gains-nothing = This roof gains nothing in this weather: the outside is { $compared } as the inside. For no gain it needs { $balance } or { $system ->
        [us] more
       *[si] less
    }.{ $dry ->
        [yes] {""}
       *[no] {" "}But { $settles }.
    }
just-as-open = just as open
as-open = { $ratio } as open
as-tight = { $ratio } as tight

## The questions

inner-changes-why = More gets in, but it leaves as fast. The outer face stays below 100 %: { $humid }.
inner-changes-ask = The outer membrane has { $perms }. The inner film changes from { $tight } to { $loose }. The room is { $room } and { $rh }, it is { $cold } and 80 % outside. How much water does the roof gain?
inner-changes-hint = Set both films on the page, one after the other. Read what gathers, and the dampest face.
inner-changes-right = None in both cases. RH at the outer face goes from { $before } to { $after }.
inner-changes-counts-only-what-comes = { $times } times more than before.
inner-changes-counts-only-what-comes-reply = The flow grows, but it leaves through the open outer layer. Gain is what comes minus what goes.
inner-changes-counts-only-what-leaves = It gains less than before, since it can dry to both sides.
inner-changes-counts-only-what-leaves-reply = There was no gain before. A change from nothing to nothing is not less.
what-cuts-why = Now it gains { $now }, with the tighter film { $less }. But then it dries to the room more slowly: see July.
what-cuts-ask = A roof has OSB of { $osb } outside and a film of { $inner } inside. It gains { $now } at { $cold }. What cuts that most?
what-cuts-hint = Some vapor comes to that face, and some can leave it. What does each of the four do to the two?
what-cuts-right = A film of { $tighter } inside.
what-cuts-more-vents-always-help = A bigger vent space over the OSB.
what-cuts-more-vents-always-help-reply = The vent is beyond the OSB, which is the tight layer. The gain stays { $now }.
what-cuts-more-r-is-drier = More fill, { $more } in place of { $usual }.
what-cuts-more-r-is-drier-reply = More fill makes the OSB colder. The gain is then { $fill }.
what-cuts-two-barriers-twice-as-good = A second plastic sheet, over the OSB. Two keep out more than one.
what-cuts-two-barriers-twice-as-good-reply = Inside it would keep vapor out. Over the OSB it keeps in what has come: the gain is then { $both }.
open-is-not-enough-why = As much comes as even { $perms } cannot let out in such cold: the roof gains { $found }.
open-is-not-enough-ask = The house is kept at { $rh } all year, with a humidifier in winter. It is { $room } in the room and { $cold } outside. There is no inner film, and the outer membrane has { $perms }. What happens at the outer face?
open-is-not-enough-hint = Set this weather on the page. How much comes to the outer face, and how much can leave it?
open-is-not-enough-right = It gains { $found }.
open-is-not-enough-same-humidity-all-winter = Nothing. { $rh } is healthy, summer and winter.
open-is-not-enough-same-humidity-all-winter-reply = For the nose it may be. What the roof can take falls with the cold: at { $cold } it gains { $found }.
open-is-not-enough-counts-only-what-leaves = Nothing. An open outside lets out all that comes.
open-is-not-enough-counts-only-what-leaves-reply = Open helps only as long as more can leave than comes. Here { $found } stay.
# $wet: what is in it; $soon, $half and $tight: days.
wet-start-ask = A leak left { $wet } on { $area } of each of three roofs, at the outer layer. It is mended. Spring comes: { $room } and { $rh } inside, { $mild } and 60 % outside. Which roof is dry first?
wet-start-hint = The leak is mended, so nothing more comes. For each roof: which way is open to the water that is in it?
wet-start-right = The variable film inside, { $open } outside.
wet-start-two-barriers-twice-as-good = Plastic on both sides. Two barriers protect twice as well.
wet-start-two-barriers-twice-as-good-reply = They keep vapor out, and they keep this water in: { $tight } days at that rate. With the film and the open outside it is { $soon }.
wet-start-wet-lumber-dries-itself = All about the same. Once it is warm inside wet wood dries by itself.
wet-start-wet-lumber-dries-itself-reply = Warmth is in all three. But behind plastic on both sides it takes { $tight } days at that rate, with plastic inside alone { $half }, and with the film { $soon }.
wet-start-counts-only-what-comes = Plastic inside and { $osb } outside, since no more can come from the room.
wet-start-counts-only-what-comes-reply = With the plastic it gets less from the room, and it gives less to the room. It takes { $half } days at that rate, not { $soon }.
wet-start-why = The variable film and an open outside let it out both ways: { $soon } days at that day's rate. Plastic on both sides: { $tight }.

## The picture

axis-inner = inner membrane, { $unit }; right is open
axis-outer = outer layer, { $unit }; up is open
key-gain = winter gain,
key-over = over { $most }
key-band = { $low } – { $high }
key-none = none
alt-map = Map of winter gain over the permeance of the inner layer and of the outer layer.
alt-here = { $gains ->
        [yes] You are at { $inner } inside and { $outer } outside: this roof gains { $gain }.
       *[no] You are at { $inner } inside and { $outer } outside: this roof gains no water in this weather.
    }
alt-share = Of the roofs on the map, { $share } gain water.

## The beats

map-inside = inside, more open →
map-outside = outside, more open ↑
map-folk = five to one
map-gains = water gathers
gains-a-day = { $amount } a day
film-has = film { $permeance }
outer-has = outer layer { $permeance }
# $mild: how warm it is outdoors then.
in-spring = Spring: { $mild }
dries-in = { $days } days to dry
takes = can take { $humidity } RH
beat-first-say = { $system ->
        [us] Each letter is a roof on the map: perms inside, perms outside. Which one gains the most water?
       *[si] Each letter is a roof on the map: sd inside, sd outside. Which one gains the most water?
    }
beat-first-ask = Point at a roof on the map, or choose from the list.
beat-first-answer = The tight outside with the more open inside gains the most: { $most }. Tight on both sides it is { $other } a day. Open outside: none.
beat-first-also = { $flux }
beat-five-say = This roof is five times as open outside as inside. Does the old rule hold in the cold?
beat-five-ask = Make it colder outdoors until water gathers in it.
beat-five-control = Outdoors
beat-five-answer = At { $cold } five to one is not enough: { $amount }. { $stops ->
        [yes] It would take { $needed } to one.
       *[no] No outer layer would stop it.
    }
beat-five-also = { $flux }
beat-both-say = Plastic on both sides, or a film and a sheet that let some through. Which is better?
beat-both-ask = Bet on January and on spring before you see either.
beat-both-first = Tight on both sides
beat-both-second = Some way out
beat-both-january-ask = January, both roofs dry at first. Which one gains less water?
beat-both-january-tight = The one that is tight on both sides.
beat-both-january-other = The one with some way out.
beat-both-january-tight-reply = Less gets in: { $tight-gain } a day, not { $other-gain }. But it is not none, and now look at spring.
beat-both-january-other-reply = Not this time. More gets in than out: { $other-gain } a day, not { $tight-gain }. Its day comes in spring.
beat-both-spring-ask = A leak left { $leaked } in each. It is mended, and spring comes: { $mild } out. Which one is dry first?
beat-both-spring-tight = The one that is tight on both sides. Two barriers protect twice.
beat-both-spring-other = The one with some way out.
beat-both-spring-tight-reply = What keeps water out keeps water in. Of the { $leaked } next to nothing leaves, { $tight-a-day } a day: { $tight-days } days at that rate, not { $other-days }.
beat-both-spring-other-reply = It takes { $other-days } days at that rate. Between two tight sides next to nothing of the { $leaked } leaves, { $tight-a-day } a day: { $tight-days } days.
beat-both-answer = In January { $tight-gain } a day against { $other-gain }. Once wet, { $tight-days } days against { $other-days }. With { $open } outside: no gain, and { $open-days } days.
beat-both-also = { $flux } from the tight one
beat-humid-say = The house stays at { $room } RH all winter. Ten to one: does this roof stay without frost?
beat-humid-ask = Bet on both days before you see either.
beat-humid-first = A winter day
beat-humid-second = Deep cold
beat-humid-mild-ask = What gathers on the winter day?
beat-humid-mild-none = Nothing. { $room } in the house is no trouble.
beat-humid-mild-frost = Frost. { $room } in the house is too much.
beat-humid-mild-none-reply = On this day the roof can take { $mild-limit }.
beat-humid-mild-frost-reply = One would think so, since it is freezing. But on this day it can take { $mild-limit }.
beat-humid-deep-ask = And in deep cold?
beat-humid-deep-none = Nothing. { $room } is a healthy house, all winter.
beat-humid-deep-frost = Frost. { $room } in the house is too much.
beat-humid-deep-none-reply = The nose likes { $room }, and in milder weather the roof does not mind. In such cold it can take only { $deep-limit }, and so it gets { $amount } of frost a day.
beat-humid-deep-frost-reply = In such cold it can take only { $deep-limit }, and so it gets { $amount } of frost a day.
beat-humid-answer = Same house, same roof: it can take { $mild-limit } RH one day and only { $deep-limit } on the other. At { $room } it then gets { $amount } of frost a day.
beat-humid-also = { $flux }
