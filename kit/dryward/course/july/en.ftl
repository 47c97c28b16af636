### Lesson july.

## The page.

# $spring and $yard are airs, $roof the insulation and the drywall.
given = room at { $humidity }, { $roof }; drying on a spring day of { $yard } outdoors, { $spring } in the room
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
colder-room-barrier-always-inside = Nothing. Plastic is plastic.
colder-room-wrong-side-of-the-film = It dries. Air conditioning dries.
colder-room-wrong-side-of-the-film-reply = It dries the room, not the cavity behind the plastic.
summer-water-why = The outdoor dew point is { $dew }, above { $back }. So it depends on the layers.
summer-water-ask = Outside it is { $hot } and { $humid }. The back of the drywall is { $back }. Can water form there?
summer-water-hint = Hold the back of the drywall against the dew point of the outdoor air.
summer-water-right = Yes, if the outdoor vapor can get there.
summer-water-barrier-always-inside = No, it is summer.
summer-water-barrier-always-inside-reply = The damp side swaps with the season. In July it is outside.
summer-water-wrong-side-of-the-film = Only if the room is humid.
summer-water-wrong-side-of-the-film-reply = The vapor comes from outside. The room only makes the face cold.
spring-drying-why = Toward the room: { $bare } with no film, { $film } with the variable film, { $plastic } with plastic.
spring-drying-ask = It is spring, { $mild } and 60 % outside, { $room } and { $rh } inside. Wood on the inside of the OSB is wet. Which inner layer lets it dry toward the room?
spring-drying-hint = For each of the three: how open is the way from the wet wood to the room?
spring-drying-right = The variable film, or no film.
spring-drying-two-barriers-twice-as-good = Plastic. It keeps water out.
spring-drying-two-barriers-twice-as-good-reply = It keeps water in just as well: { $plastic } inward, not { $film }.
spring-drying-one-path-does-it-all = All the same. It dries out through the OSB.
spring-drying-one-path-does-it-all-reply = Outward it loses { $outward } in all three. What goes inward comes on top.
spring-drying-one-path-does-it-all-seems = In winter that is the way it dries.
