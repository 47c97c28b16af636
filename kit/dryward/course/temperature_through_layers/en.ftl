### Lesson 4: temperature through the layers.

## The page

# $room is an air; $film and $sheathing are permeances.
given = room { $room }, outdoor air at { $humidity }, a film of { $film } behind the drywall, OSB sheathing of { $sheathing }
draw-against = Draw against
inches = inches
r-value = R-value
wall = Wall
wall-2x6-us = 2x6, R-20; board open to vapor
wall-2x6-si = 140 mm, RSI 3.52; board open to vapor
wall-2x6-some-us = the same, 15 % wood
wall-2x6-some-si = the same, 15 % wood
wall-2x6-usual-us = the same, 25 % wood
wall-2x6-usual-si = the same, 25 % wood
wall-2x6-foil-us = 2x6, R-20; foam with foil outside
wall-2x6-foil-si = 140 mm, RSI 3.52; foam with foil outside
wall-2x12-us = 2x12, R-40; board open to vapor
wall-2x12-si = 286 mm, RSI 7.04; board open to vapor
wall-2x12-foam-us = 2x12, foam with foil in the bay
wall-2x12-foam-si = 286 mm, foam with foil in the bay
board-r = R of the board
face = The face you ask about
# $where: whether the room or outdoors is warmer there.
face-note = inner face of { $layer }{ $where ->
        [coldest] , coldest in the bay
        [warmest] , warmest in the bay
       *[even] {""}
    }
share = R outside that face
gain = Water gained
whole = R from air to air
# $share is that of the wood; $wood: whether any is counted.
whole-note = { $wood ->
        [yes] { $between } between studs; wood { $share }
       *[no] between the studs alone, no wood counted
    }
humidity-limit = Leaking room air wets it from
humidity-limit-none = no room air
humidity-limit-note = RH; this room has { $humidity }, dew point { $dew }
humidity-limit-warm = the face is no colder than the room
# $gathers: whether water gathers at that face, only elsewhere, or nowhere; $water: where and how much, or how dry the
# wall is.
stands = { $share } of the R is outside the inner face of the { $layer }, so that face sits { $share } of the way from the outdoor to the room temperature: { $temperature }. { $gathers ->
        [there] Vapor comes through the film, and { $water }.
        [elsewhere] Not at that face, but where it is cool and tight on the way in from outdoors, { $water }.
       *[nowhere] No water gathers, and { $water }.
    }
step-before = R from the room to the { $layer }: film of air, gypsum board, bay.
step-total = R of everything, between the studs.
step-plane = Go down from the room by that share.
step-whole = R of the whole wall: each part lets heat by in its share of the area.

## The questions

behind-the-board-why = { $outer } of { $total } is outside the plane, so it is { $share } of the way up from outdoors: { $found }.
behind-the-board-ask = A wall has { $total } in { $thick }. Of that, { $outer } in { $board } is outside one plane. It is { $warm } inside and { $cold } outside. How warm is the plane?
behind-the-board-hint = Write down the whole R, and the R on each side of this plane.
over-the-deck-why = The deck is at { $after } now, not { $before }, and the board lets vapor on: the deck gains { $gains }, not { $gained }.
over-the-deck-ask = Rafters of { $deep } are filled with { $fill }, with a film of { $perms } inside and OSB on top, under a roofing with air below it. It is { $cold } outside. You lay { $r } of a board that is open to vapor over the OSB. What does the water at the OSB do in winter?
over-the-deck-hint = Set a bay like this on the page. How warm is the OSB with the board and without it?
over-the-deck-right = It gets less: the OSB is warmer, and the board lets vapor by.
over-the-deck-outside-insulation-makes-water = It gets more. The board moves the dew point to the OSB and makes water.
over-the-deck-outside-insulation-makes-water-reply = The line on the drawing does move. But the OSB is at { $after }, not { $before }, so it gains { $gains }, not { $gained }.
over-the-deck-outside-insulation-makes-water-seems = A thin board with foil can do that. This one is open.
over-the-deck-inches-not-r = Nothing. A board of { $board } on { $deep } is too thin to count.
over-the-deck-inches-not-r-reply = It is thin, but it has { $r }: the OSB goes from { $before } to { $after }.
inch-of-foam-why = { $share } of the R is outside the foam's inner face, so it is at { $face }. Air of { $room } and { $rh } leaves water on all that is colder than { $dew }.
inch-of-foam-ask = It is { $cold } outside. A roof has { $inch } of foam, { $foam }, against the deck and { $fill } of open fill under it. The room has { $room } and { $rh }. Some of its air gets up to the foam. What does it find there?
inch-of-foam-hint = Add up the R, outdoors to room. What share is outside the foam's inner face, and how warm is that?
inch-of-foam-right = A face below its dew point: frost or drops.
inch-of-foam-inch-of-foam-is-enough = A dry face. An inch of foam against the deck takes care of the dew point.
inch-of-foam-counts-from-wrong-side = A dry face, at about { $wrong }.
whole-roof-why = { $part } is wood of { $wood }. Side by side, as heat goes through them: 1 / ({ $rest } / { $fill } + { $part } / { $wood }) = { $found }.
whole-roof-ask = Rafters of { $deep } take { $part } of a roof, and the bays are full, with a label of { $fill }. The wood has { $wood }. What R has that layer of the roof, wood and all?
whole-roof-hint = How much heat goes through a part of fill, and how much through one of wood? Heat adds up, R does not.
squeezed-why = R per inch rises, but { $lost } are lost: about { $found } is left.
squeezed-ask = A batt of { $r }, { $full } thick, is squeezed into a { $bay } bay. What do you get?
squeezed-hint = Two things change in a squeezed batt: how thick it is, and how dense. Hold both against the label.
squeezed-right = Less than the label: about { $found }.
squeezed-label-r-is-wall-r = { $r }. It says so on the label, so that is what the wall has.
squeezed-denser-is-more = More than { $r }. It is denser now.

## The beats

# $area is that of the wall or roof that amounts are told on.
scale = Amounts are for { $area } of { $roof ->
        [yes] roof
       *[no] wall
    }. { $number } dots a minute: { $amount } a day.
sheathing-at = Sheathing { $temperature }
batt = label: { $label }
through-fill = heat, through fill: { $r }
through-wood = heat, through a stud: { $r }
beat-first-say = It is cold out. You put { $r } of vapor-open board outside. Where does the sheathing's thermometer go?
beat-first-ask = Take a letter at the thermometer, or choose from the list.
beat-first-first = Before: no board
beat-first-second = With { $r } outside
beat-first-answer = { $share } of the R is outside the sheathing now, so it goes from { $before } to { $after }. Frost: { $bare } a day before, none now.
beat-first-also = { $flux } before
beat-outside-say = Bare, this sheathing gets { $bare } of frost a day. Behind each of these boards: more frost, or less?
beat-outside-ask = Bet on both before you see either.
beat-outside-first = Vapor-open board, { $r }
beat-outside-second = Foam with foil, { $r }
beat-outside-open-ask = Behind the vapor-open board: more water than { $bare } a day, or less?
beat-outside-open-more = More. Insulation outside moves the dew point and makes water.
beat-outside-open-less = Less than bare.
beat-outside-open-more-reply = The line on the drawing does move. But the sheathing is warmer, { $open-at } and not { $bare-at }, and the board lets vapor on: { $open } a day, not { $bare }.
beat-outside-open-less-reply = The sheathing is warmer, { $open-at } and not { $bare-at }, and the board lets vapor on: { $open } a day, not { $bare }.
beat-outside-foil-ask = And behind the thin foam with foil?
beat-outside-foil-more = More than bare.
beat-outside-foil-less = Less. R outside keeps it warm.
beat-outside-foil-more-reply = The old hand is right about this one. It warms the sheathing to { $foil-at }, which is still too cold, and lets nothing out: { $foil } a day, not { $bare }.
beat-outside-foil-less-reply = It is as warm as behind the open board, { $foil-at }. But that is still too cold, and the foil lets nothing out: { $foil } a day, not { $bare }.
beat-outside-answer = Same R: open board { $open } a day, thin foil { $foil }, bare { $bare }. Warmth helps if what gets in can get out.
beat-outside-also = { $open-flux } and { $foil-flux }
beat-inch-say = Foam with foil against the deck, deep fill under it. Does water gather on the foam's inner face?
beat-inch-ask = Bet on both before you see either.
beat-inch-first = { $inch-thick } of foam
beat-inch-second = { $enough-thick } of foam
beat-inch-inch-ask = On the foam that is { $inch-thick } thick?
beat-inch-inch-none = No. That foam takes care of the dew point.
beat-inch-inch-wet = Yes, its face is cold enough.
beat-inch-inch-none-reply = Foam is tight, and the fill no longer touches the deck. So it touches the foam, with { $inch-share } of the R outside it: { $inch-at }, and { $inch-amount } of frost a day.
beat-inch-inch-wet-reply = Only { $inch-share } of the R is outside that face: { $inch-at }, and { $inch-amount } of frost a day.
beat-inch-enough-ask = And on { $enough-thick }?
beat-inch-enough-none = No.
beat-inch-enough-wet = Yes. All foam in a bay gets wet.
beat-inch-enough-none-reply = { $enough-share } of the R is outside that face, so it is at { $enough-at }. No water, but { $enough-humid } RH: not far from it.
beat-inch-enough-wet-reply = Foam is not cold by itself. With { $enough-share } of the R outside it the face is at { $enough-at }, above the { $dew } of the room's dew point.
beat-inch-answer = { $inch-thick } of this foam is { $inch-share } of the R: { $inch-amount } of frost a day. From { $need } on the face is above the room's dew point.
beat-inch-also = This kit's builder uses no plastic foam. It is shown because clients ask.
beat-label-say = Seen from above: the same batt, { $label }. What R has the wall, from room air to outdoor air?
beat-label-ask = Bet on both before you see either.
beat-label-first = Between the studs
beat-label-second = The wall, { $part } wood
beat-label-between-ask = What is it between the studs?
beat-label-between-label = { $label }, as on the label.
beat-label-between-more = { $more }
beat-label-between-less = { $less }
beat-label-between-label-reply = The label is of the batt alone. Drywall, sheathing and the air at both faces add a little: { $more }.
beat-label-between-more-reply = The batt, and a little more from drywall, sheathing and the air at both faces: { $more }.
beat-label-between-less-reply = That is less than the batt by itself. Here is no wood yet, and boards and air add a little: { $more }.
beat-label-whole-ask = And of the whole wall, with its studs, plates and headers?
beat-label-whole-label = { $label }. An { $label } batt makes an { $label } wall.
beat-label-whole-more = { $more }
beat-label-whole-less = { $less }
beat-label-whole-label-reply = Big print, but of the batt alone. { $part } of the wall is wood, { $wood } through each stud: { $less } in all.
beat-label-whole-more-reply = So it is between the studs. Heat goes beside the batt too, { $wood } through each stud: { $less } in all.
beat-label-whole-less-reply = { $part } of the wall is wood, and each stud has only { $wood } from air to air: { $less } in all.
beat-label-answer = { $more } between the studs, { $less } in all: { $heat } more heat goes out than between the studs.

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
