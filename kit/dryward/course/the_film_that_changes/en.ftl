### Lesson 8: the film that changes.

## The page

# $room is the temperature of the room, $outdoor an air, $roof the insulation and the drywall.
given = room { $room }, outdoor air { $outdoor }, { $roof }
weather = Weather
january-us = January, 20 °F, 80 %
january-si = January, −7 °C, 80 %
july-us = July, 85 °F, 75 %
july-si = July, 29 °C, 75 %
desert-us = desert, 95 °F, 15 %
desert-si = desert, 35 °C, 15 %
film = Inner membrane
variable = humidity-variable
fixed-us = fixed (1 perm)
fixed-si = fixed (sd 3.5 m)
direction-dependent = two sheets, the sensitive one outward
flipped = two sheets, wrong face in
open-sheet = open by mistake
permeance-at-mean = at a mean of { $mean }
permeance-other-way = the other way round { $other }
inside-face = RH on its room side
outside-face = RH on the other side
permeance = The film has
flow = Vapor at the room side
flow-note = { $outward ->
        [yes] into the roof
       *[no] into the room
    }
gain = Water gained
# The beginning of each sentence of the page: what the faces see, and what the film does.
fixed-sees = Its faces see { $inside } and { $outside }, and this sheet has { $permeance } whatever they see
film-sees = Its faces see { $inside } and { $outside }: the film is { $state ->
        [open] open
        [opening] opening
       *[tight] tight
    }, { $permeance }
# $sees is one of the two beginnings above; $gathers and $settles are said of the roof.
gathers = { $sees }; { $gathers }.
opens-at-the-wrong-time = { $sees }. It opens at the wrong time: the room pushes vapor out, and { $gathers }.
opens-and-stays-dry = { $sees }. It opens while the room pushes vapor out, but all of it can leave: { $settles }.
no-water = { $outward ->
        [yes] { $sees }. Vapor goes out of the room, and no water gathers: { $settles }.
       *[no] { $sees }. Vapor goes into the room. So the roof gives off inward, and no water gathers: { $settles }.
    }
step-fixed = A fixed sheet: nothing to work out.
step-sensitive = The sensitive sheet, read at the mean RH of its own two faces; then both sheets in a row.
step-mean = Mean RH of its two faces.
step-level = { $below ->
        [yes] The film's curve is level up to { $humidity }.
       *[no] The film's curve is level from { $humidity } on.
    }
step-curve = { $system ->
    [us] The film's curve, in perms: straight on a log scale.
   *[si] The film's curve, in m of sd: straight on a log scale.
}

## The questions

opens-why = Read the curve at the mean RH, { $mean }: { $found }.
opens-ask = Between dry faces the teaching film has { $dry }. Now its two faces see { $inside } and { $outside }. What does it do?
opens-hint = Find the mean of { $inside } and { $outside } under the film's curve on the page. Which way does the curve run to get there?
opens-right = It opens, to about { $found }.
opens-film-closes-when-humid = It closes, to well below { $dry }.
opens-film-waits-for-water = It stays at { $dry } until it is wet.
opens-film-waits-for-water-reply = It starts to open near 30 % mean RH on this curve, long before drops.
wet-site-why = It opens from { $first } to { $then }, and the gain rises from { $little } to { $much }. Dry the site air.
wet-site-ask = It is January and { $cold }. New plaster dries, and the house goes from { $dry } to { $wet } at { $room }. The roof has OSB outside and the teaching film inside. What does the film do?
wet-site-hint = Stay in January on the page and take the room from { $dry } to { $wet }. Watch the dot on the curve.
wet-site-right = It opens and lets more water in.
wet-site-film-closes-when-humid = It closes, since it is humid.
wet-site-film-closes-when-humid-reply = Damp is what opens it: from { $first } to { $then }. The gain rises from { $little } to { $much }.
wet-site-film-knows-the-season = It stays tight, since it is winter.
wet-site-film-knows-the-season-reply = It does not know that it is winter. At { $wet } in the room it opens from { $first } to { $then }, and the gain rises from { $little } to { $much }.
dry-july-why = Its faces see { $inside } and { $outside }, and at that its curve gives { $found }.
dry-july-ask = It is July in a desert, { $hot } and { $low }, and the room is cooled to { $room } and { $rh }. The roof has the teaching film inside. What does the film do?
dry-july-hint = Choose the desert on the page and set the room to { $rh }. What do the two faces of the film see?
dry-july-right = It is tight, as in a dry winter.
dry-july-film-knows-the-season = It is open. It is July.
dry-july-film-knows-the-season-reply = Where July is humid it is open. Here its faces see { $inside } and { $outside }, and it goes by that: { $found }, July or not.
dry-july-film-is-a-check-valve = It is open inward and shut outward.
dry-july-film-is-a-check-valve-reply = It has one number for both ways. At the { $inside } and { $outside } that its faces see, that is { $found }.
face-to-room-why = { $toward } with the sensitive sheet to the damp side, { $away } away from it.
face-to-room-ask = A film is bonded from a sensitive sheet and a backing with fixed perms. One side has { $damp } RH, the other { $dry }. With which sheet to the damp side is it more open?
face-to-room-hint = Which of the two sheets can change at all? Ask how damp it gets, one way round and the other.
face-to-room-right = The sensitive sheet.
face-to-room-film-closes-when-humid = The backing. The sensitive sheet would close.
face-to-room-film-closes-when-humid-reply = Damp opens the sensitive sheet. With it to the damp side the film has { $toward }, with the backing there { $away }.
face-to-room-same-both-ways = It makes no difference. A film is the same both ways.
face-to-room-same-both-ways-reply = One plain sheet is. This film has { $toward } one way round and { $away } the other, at the same { $damp } and { $dry }.
face-to-room-film-is-a-check-valve = Neither. It lets vapor one way only.
face-to-room-film-is-a-check-valve-reply = Vapor passes both ways: { $toward } with the sensitive sheet to the damp side, { $away } with the backing there.
turned-over-why = In this January the film of two sheets goes from { $right } to { $wrong } when it is turned over. One plain sheet does not change: { $plain } both ways.
turned-over-ask = It is January, { $cold } outside, and the room is at { $room } and { $rh }. In two roofs the film is turned over by mistake. One film is a plain variable sheet, the other is two sheets, made to have its sensitive one outward. Which lets more vapor in than before?
turned-over-hint = Choose each of the films on the page in January. Which of them has a second number, the other way round?
turned-over-right = Only the one of two sheets.
turned-over-same-both-ways = Neither. A film is the same both ways.
turned-over-same-both-ways-reply = The plain sheet is: { $plain } both ways. But of two sheets the sensitive one meets the damp room now, and the film goes from { $right } to { $wrong }.
turned-over-every-film-has-a-side = Both. Every film has a right side.
turned-over-every-film-has-a-side-reply = Turn one plain sheet over and nothing changes: { $plain } both ways. The film of two sheets goes from { $right } to { $wrong }.

## The picture

axis-mean = mean RH of its two faces, %
axis-permeance = { $unit }; up is more open
# Two lines, each short.
room-side = room
    side
other-side = other
    side
faces = RH at its faces
gaps-open = gaps = open
axis-by-month = { $unit } by month
axis-month = month
year-bars = bars: humid town
year-dots = dots: desert town
alt-year = Over the year it goes from { $lowest } to { $highest } in a humid town, and from { $least } to { $most } in a desert town.
alt-curve = Curve of the permeance of a film over the mean relative humidity of its two faces.
alt-now = Now its faces are at { $inside } on the room side and { $outside } on the other side, mean { $mean }: it has { $now }.
facing = sensitive sheet to room
turned = sensitive sheet outward
bar-facing = to room
bar-facing-short = in
bar-turned = outward
bar-turned-short = out
sheet-sensitive = sensitive
sheet-backing = backing
room = room
axis-humidity = RH, %
far-side = far side
alt-two-sheets = A film of two sheets, both ways round.
alt-both-ways = { $turned ->
        [yes] With the sensitive sheet outward, the humidity goes from { $near } at the room face over { $middle } between the sheets to { $far } at the far face, and the film has { $permeance }.
       *[no] With the sensitive sheet to the room, the humidity goes from { $near } at the room face over { $middle } between the sheets to { $far } at the far face, and the film has { $permeance }.
    }

## The beats

face-has = RH { $humidity }
face-unknown = RH ?
film-is = { $permeance }, { $state ->
        [open] open
        [opening] opening
       *[tight] tight
    }
film-unknown = the film: ?
vapor-goes = { $outward ->
        [yes] To roof: { $amount } a day
       *[no] To room: { $amount } a day
    }
sensitive = sensitive sheet
sensitive-sees = sensitive, RH { $humidity }
backing = backing
a-day = { $amount } a day
beat-first-say = The air outdoors is humid, in January and in July. When is the film open?
beat-first-ask = Take a letter in the picture, or choose from the list.
beat-first-first = January
beat-first-second = July
beat-first-answer = The same film is { $times } times as open in July. It lets { $july } a day into the room; in January it lets { $january } into the roof.
beat-first-also = { $flux } in July, { $other } in January
beat-site-say = January on a job site, with an OSB deck. New plaster dries, and the room gets humid.
beat-site-ask = Slide the room humidity up until the film is twice as open: { $target }.
beat-site-control = Room humidity
beat-site-answer = { $open ->
        [yes] Still January, and the humid room opened the film: { $now } of frost a day at the OSB. Tight, at { $start }, it was { $before } already.
       *[no] { $wet ->
            [yes] At { $room } in the room the film is tighter, and the OSB still gets { $now } of frost a day.
           *[no] At { $room } in the room the film is tight. It lets { $passes } a day through, the OSB lets all of it out, and no frost stays.
        }
    }
beat-site-also = { $flux } stay at the OSB
beat-season-say = July in two towns. The rooms are alike, and so is the film. What does it do?
beat-season-ask = Bet on both before you see either.
beat-season-first = July, humid town
beat-season-second = July, desert
beat-season-town-ask = What does the film do in the humid town?
beat-season-town-open = It opens, as it does in July.
beat-season-town-tight = It stays tight, July or not.
beat-season-town-open-reply = It is open at { $town-film }. But July did not do it: humid air did, { $town-inside } on one face and { $town-outside } on the other.
beat-season-town-tight-reply = It goes by RH alone, and here both faces are humid: { $town-inside } and { $town-outside }. So it is open at { $town-film }.
beat-season-desert-ask = And in the desert?
beat-season-desert-open = It opens, as it does in July.
beat-season-desert-tight = It stays tight, July or not.
beat-season-desert-open-reply = Where most of us build, July is humid, so it looks like a calendar. Here the faces see { $desert-inside } and { $desert-outside }, and it is tight at { $desert-film }.
beat-season-desert-tight-reply = It has no calendar. Its faces see { $desert-inside } and { $desert-outside }, both dry, and it is tight at { $desert-film }.
beat-season-answer = Both are July. In the humid town { $town-amount } a day pass the film, in the desert { $desert-amount }.
beat-season-also = { $town-flux } into the room, { $desert-flux } into the roof
beat-sides-say = This film is two sheets, and only one changes with RH. Which way round is better?
beat-sides-ask = Bet on January and on July before you see either.
beat-sides-first = January
beat-sides-second = July
beat-sides-january-ask = Which way round lets less vapor into the roof in January?
beat-sides-january-in = Inward: the sensitive sheet toward the room.
beat-sides-january-out = Outward: the sensitive sheet toward the insulation.
beat-sides-january-same = No difference: a film is the same both ways.
beat-sides-january-in-reply = One thinks that the sheet that works belongs to the humid side. There it sees { $january-in-sees } RH and opens: { $january-in } a day get in. Outward it sees { $january-out-sees }: { $january-out }.
beat-sides-january-out-reply = Out there the sheet sees only { $january-out-sees } and stays tight: { $january-out } a day get in, not { $january-in }.
beat-sides-january-same-reply = One plain sheet is the same both ways. Here the sheet sees { $january-in-sees } one way, { $january-out-sees } the other, and { $january-in } or { $january-out } get in.
beat-sides-july-ask = And which lets more out of the roof, into the room, in July?
beat-sides-july-in = Inward: the sensitive sheet toward the room.
beat-sides-july-out = Outward: the sensitive sheet toward the insulation.
beat-sides-july-same = No difference: a film is the same both ways.
beat-sides-july-in-reply = The humid side is outside now. Inward, the sheet sees { $july-in-sees }. Outward, it sees { $july-out-sees } and opens more: { $july-out } a day, not { $july-in }.
beat-sides-july-out-reply = The humid side is outside now, and there the sheet sees { $july-out-sees } and opens: { $july-out } a day, not { $july-in }.
beat-sides-july-same-reply = One plain sheet is the same both ways. Here the sheet sees { $july-in-sees } one way, { $july-out-sees } the other: { $july-in } or { $july-out } a day get out.
beat-sides-answer = Sensitive sheet outward: { $january-apart } a day less gets in, in January, and { $july-apart } a day more gets out in July.
beat-sides-also = { $january-flux } and { $july-flux }
