### Lesson 4: temperature through the layers.

## The page

# $room is an air.
given = room { $room }, outdoor air at { $humidity }, a 2x6 wall
draw-against = Draw against
inches = inches
r-value = R-value
sheathing = Inner face of sheathing
drywall = Wall face in the room
total = R in all, with air films
share = R outside the sheathing
humidity-limit = Leaking room air wets it from
humidity-limit-none = no room air
humidity-limit-note = RH; this room has { $humidity }, dew point { $dew }
humidity-limit-warm = the face is no colder than the room
stands = { $share } of the R is outside the inner face of the sheathing, so that face sits { $share } of the way from the outdoor to the room temperature: { $temperature }. { $leak }
# What room air that leaks to the face would do there. $over: whether it has more vapor than can stay.
leak-wets = Room air that leaks to it would come to 100 % there{ $over ->
        [yes] , with { $times } times the vapor that can stay
       *[no] {""}
    }: { $frost ->
        [yes] frost forms
       *[no] drops form
    }.
# $settles: where the wood would settle.
leak-stays = Room air that leaks to it would come to { $humidity } there: { $settles }{ $mold ->
        [yes] , and mold can grow
       *[no] {""}
    }.
step-before = R from the room to the sheathing: film, gypsum board, bay.
step-total = R of everything.
step-plane = Go down from the room by that share.
step-pressure = Vapor pressure of the room air.
step-most = The most vapor pressure there can be at the sheathing: that of air at 100 % as cold.
# $over: whether it comes to more than 100 %.
step-there = { $over ->
        [yes] Room air that leaks there: the one over the other. What is over 100 % does not stay.
       *[no] Room air that leaks there: the one over the other.
    }

## The questions

behind-the-board-why = { $outer } of { $total } is outside the plane, so it is { $share } of the way up from outdoors: { $found }.
behind-the-board-ask = A wall has { $total } in { $thick }. Of that, { $outer } in { $board } is outside one plane. It is { $warm } inside and { $cold } outside. How warm is the plane?
behind-the-board-hint = Write down the whole R, and the R on each side of this plane.
doubled-why = Less heat flows, so less temperature is lost on the way to that plane.
doubled-ask = A layer of { $middle } is doubled. Before that the plane on its room side was { $before }, with { $room } inside and { $cold } outside. What happens to that plane?
doubled-hint = What share of the whole R stands between the room and this plane, before and after?
doubled-right = It gets warmer: { $after }.
doubled-outside-insulation-makes-water = It gets colder: { $colder }.
doubled-outside-insulation-makes-water-seems = A plane outside the layer does get colder.
doubled-inches-not-r = It stays at { $before }. The layer only got thicker.
squeezed-why = R per inch rises a little, by about a fifth, but { $lost } are lost: about { $found }.
squeezed-ask = A batt of { $r }, { $full } thick, is squeezed into a { $bay } bay. What do you get?
squeezed-hint = Two things change in a squeezed batt: how thick it is, and how dense. Hold both against the label.
squeezed-right = Less than the label: about { $found }.
squeezed-label-r-is-wall-r = { $r }. It says so on the label.
squeezed-inches-not-r = More: { $squeezed }. It is denser now.
squeezed-inches-not-r-seems = More stuff in less space sounds like more insulation.
squeezed-nothing = Nothing at all. A squeezed batt does not insulate.
squeezed-nothing-reply = It still insulates: about { $found }.
squeezed-nothing-seems = It is the air in a batt that insulates, and some of it is pressed out.

## The picture

key-here = the face you ask about
axis-depth = depth from the room, { $unit }
axis-resistance = R from room air
# The same with its unit, where R has one.
axis-resistance-unit = R from room air, { $unit }
axis-temperature = temperature, { $unit }
alt-graph = { $against ->
        [depth] Graph of temperature over depth, from { $warm } in the room to { $cold } outside, through: { $layers }.
       *[resistance] Graph of temperature over thermal resistance, from { $warm } in the room to { $cold } outside, through: { $layers }.
    }
alt-layers = { $first }; { $next }
alt-plane = The plane you ask about, at { $place }, has { $temperature }.
