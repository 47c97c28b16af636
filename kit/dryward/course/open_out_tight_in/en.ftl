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
what-cuts-why = Now it gains { $now }, with the tighter film { $less }. But then it can hardly dry to the room: see July.
what-cuts-ask = A roof has OSB of { $osb } outside and a film of { $inner } inside. It gains { $now } at { $cold }. What cuts that most?
what-cuts-hint = Some vapor comes to that face, and some can leave it. What does each of the four do to the two?
what-cuts-right = A film of { $tighter } inside.
what-cuts-more-vents-always-help = A bigger vent space over the OSB.
what-cuts-more-vents-always-help-reply = The vent is beyond the OSB, which is the tight layer. The gain stays { $now }.
what-cuts-label-r-is-wall-r = More fill, { $more } in place of { $usual }.
what-cuts-label-r-is-wall-r-reply = More fill makes the OSB colder. The gain is then { $fill }.
what-cuts-two-barriers-twice-as-good = A second plastic sheet over the OSB.
what-cuts-two-barriers-twice-as-good-reply = Then even less leaves. Tight on both sides can hardly dry.
open-is-not-enough-why = The supply beats even { $perms }: the roof gains { $found }.
open-is-not-enough-ask = The room is { $room } and { $rh }, it is { $cold } and 80 % outside. There is no inner film and the outer membrane has { $perms }. What happens at the outer face?
open-is-not-enough-hint = Set this weather on the page. How much comes to the outer face, and how much can leave it?
open-is-not-enough-right = It gains { $found }.
open-is-not-enough-one-check-decides = Nothing. An open outside can never get wet.
open-is-not-enough-one-check-decides-reply = Open helps only as long as more can leave than comes. Here { $found } stay.
open-is-not-enough-dew-point-is-a-place = Nothing. Only OSB gets wet.
open-is-not-enough-dew-point-is-a-place-reply = Any cold face gets wet when more comes than can leave.

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
