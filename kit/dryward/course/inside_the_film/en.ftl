### Lesson inside the film.

## The page.

# $roof is its insulation and its drywall.
given = room { $room }, outdoor air at { $humidity }, { $roof }
inside = Insulation inside the film
deep-us = open sheet (50 perm), R-66 fill
deep-si = open sheet (sd 0.07 m), RSI 11.6 fill
film = Film
inside-face = RH on its room side
inside-face-note = other side { $outside }
mean = Mean of both sides
permeance = The film has
gain = Water gained
# $water is where water gathers: a piece of a sentence.
gathers = With { $share } of the insulation inside it, the film is at { $temperature }. It sees { $humidity } on its room side and has { $permeance }. As it stands, { $water }.
# $settles is how dry the roof is.
no-water = With { $share } of the insulation inside it, the film is at { $temperature }. It sees { $humidity } on its room side and has { $permeance }. No water gathers, and { $settles }.
step-temperature = Temperature of the film: go down by the R-values.
step-humidity = RH on its two sides, from the vapor line.
step-curve = { $system ->
    [us] The film's curve, in perms: straight on a log scale between its two ends.
   *[si] The film's curve, in m of sd: straight on a log scale between its two ends.
}
step-curve-below = The film's curve at or below { $end }.
step-curve-above = The film's curve at or above { $end }.

## The picture.

graph-share = share of the R that lies inside the film, %
graph-humidity = RH on its room side, %
graph-temperature = film, { $unit }
graph-permeance = film, { $unit }
alt-graphs = Three graphs over the share of the insulation that lies inside the film: its temperature, the relative humidity on its room side, and its permeance.
alt-now = With { $now } inside, the film is at { $warm }, sees { $damp } and has { $open }.

## The beats

r-on-both-sides = { $inside } inside the film, { $outside } outside
film-unknown = the film: ?
face-unknown = its room face: ?
film-is = film { $permeance }: { $state ->
        [open] open
        [opening] opening
       *[tight] tight
    }
face-has = RH { $humidity }
face-at = film at { $temperature }
beat-first-say = January. The service cavity is filled, to { $after-r } inside the film. What does the film do?
beat-first-ask = Take a letter in the picture, or choose from the list.
beat-first-first = { $before-r } inside
beat-first-second = { $after-r } inside
beat-first-answer = The film went from { $before-at } to { $after-at }, its room face from { $before-humid } to { $after-humid } RH. It is { $times } times as open.
beat-first-also = { $before-film } before, { $after-film } now
beat-swap-say = One batt of { $batt } more. One crew lays it outside the film, one inside. Same R in all.
beat-swap-ask = Bet on both before you see either.
beat-swap-first = Batt outside the film
beat-swap-second = Batt inside the film
beat-swap-outside-ask = The batt is outside. What does the film do in January?
beat-swap-outside-tight = It stays tight.
beat-swap-outside-open = It opens. More R makes it colder.
beat-swap-outside-tight-reply = R outside keeps it warm: { $outside-at }, { $outside-humid } RH at its room face, { $outside-film }. No water gathers.
beat-swap-outside-open-reply = More R inside makes it colder. This R is outside and keeps it warm: { $outside-at }, { $outside-humid } RH, { $outside-film }. No water gathers.
beat-swap-inside-ask = And with the same batt inside?
beat-swap-inside-tight = It stays tight. It is winter.
beat-swap-inside-open = It opens.
beat-swap-inside-tight-reply = In most roofs it is tight in January, as if it knew. But it goes by the air at its faces, and here it is at { $inside-at } and { $inside-humid } RH. It opens to { $inside-film }.
beat-swap-inside-open-reply = Behind the batt the film is at { $inside-at }, and its room face sees { $inside-humid } RH. It opens to { $inside-film }.
beat-swap-answer = Same month, same R: { $inside-amount } of frost a day with the batt inside, none with it outside.
beat-swap-also = Outside the film { $outside-flux }, inside { $inside-flux }.
beat-bath-say = January, one roof, { $bed-r } of wool in its cavity, two rooms. What does the film do over each?
beat-bath-ask = Bet on both before you see either.
beat-bath-first = Bedroom, { $bed-room } RH
beat-bath-second = Damp room, { $bath-room } RH
beat-bath-bed-ask = Over the bedroom?
beat-bath-bed-tight = It stays tight.
beat-bath-bed-open = It opens.
beat-bath-bed-tight-reply = Its room face sees { $bed-humid } RH, and it stands at { $bed-film }: as tight as it gets.
beat-bath-bed-open-reply = It is not cold here, { $bed-at }, and the room is dry: { $bed-humid } RH at its room face, and { $bed-film }.
beat-bath-bath-ask = And over the damp room?
beat-bath-bath-tight = It stays tight. It is winter.
beat-bath-bath-open = It opens.
beat-bath-bath-tight-reply = Over most rooms it would. But it has no calendar: its room face sees { $bath-humid } RH, and it opens to { $bath-film }.
beat-bath-bath-open-reply = Its room face sees { $bath-humid } RH. It opens to { $bath-film }, January or not.
beat-bath-answer = Same month, same film: { $bath-amount } of frost a day over the damp room, none over the bedroom.
beat-bath-also = Bedroom { $bed-flux }, damp room { $bath-flux }.
beat-fill-say = How much R can stand inside this film, in this cold?
beat-fill-ask = Slide the R inside up until frost gathers under the roof.
beat-fill-control = R inside the film
beat-fill-answer = { $wet ->
        [yes] { $now-r } inside is { $share } of the R. The film is at { $now-at } and opens to { $now-film }: { $now-amount } of frost a day.
       *[no] { $now-r } inside is { $share } of the R. The film is at { $now-at } and has { $now-film }. No frost, on this day.
    }
beat-fill-also = { $now-flux }

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

# $before and $after are the state of the roof without the batt and with it.
filled-cavity-why = The film goes from { $warm } to { $cool }, its room face sees { $humid }, and it opens from { $first } to { $then }. { $changes ->
    [yes] The roof goes from { $before } to { $after }
   *[no] The roof is { $after }
}, with { $share } of the R inside the film.
filled-cavity-ask = Someone fills the service cavity with { $inside }, under { $outside } outside the film. It is { $cold } outside, { $room } and { $rh } inside. What does the film do?
filled-cavity-hint = How warm is the film once the cavity is filled, and what RH does it see there?
filled-cavity-right = It cools, feels damper air, and opens.
filled-cavity-r-anywhere = Nothing. R is R, wherever it sits.
filled-cavity-r-anywhere-reply = The roof as a whole does not mind where its R sits. The film does: R inside makes it colder, { $warm } to { $cool }, and it opens from { $first } to { $then }.
filled-cavity-film-knows-the-season = Nothing. It is winter, so it is tight.
filled-cavity-film-closes-when-humid = It closes, since it is more humid.
why-empty-why = With { $resistance } in the cavity the film sits at { $warm } and { $humid } on its room face.
why-empty-ask = It is { $cold } outside and { $rh } inside. Why is the service cavity left nearly empty?
why-empty-hint = Fill the cavity on the page and watch the film: how warm it is, what RH it sees, what it does.
why-empty-right = So that the film stays warm and on the dry side.
why-empty-r-anywhere = For no reason. R is R, wherever it sits, and here some is left out.
why-empty-r-anywhere-reply = There it would make the film cold. With { $resistance } the film sits at { $warm } and { $humid } on its room face.
why-empty-r-anywhere-seems = An empty space looks like work that was left out.
why-empty-film-knows-the-season = It could as well be filled. In winter the film is tight.
why-empty-film-knows-the-season-reply = Winter does not tell it. It stays tight while it is warm and its air dry: { $warm } and { $humid } on its room face, with { $resistance } in the cavity.
why-empty-film-closes-when-humid = So that the film gets humid air and closes.
why-empty-house-must-breathe = So that the house can breathe.
why-empty-house-must-breathe-reply = Nothing breathes there. The film must be airtight.
# $state is what the roof with the tighter film is.
steam-bath-why = In this roof the bath brings { $bath }, a bedroom { $bedroom }. With a { $perms } film and little R inside it is { $less }, { $state ->
    [wet] which is wet still, so the fan comes first
    [damp] and the roof is damp
   *[dry] and the roof is dry
}.
steam-bath-ask = A bathroom that stays steamy, { $room } and { $steam }, lies under the same vault, with { $resistance } inside the film, OSB outside, and { $cold } outdoors. What do you change?
steam-bath-hint = What RH does the film see over such a room, and how open is it then?
steam-bath-right = More fan, less R inside the film or a tighter film there. Then work it out in the kit, and ask the designer.
steam-bath-more-vents-always-help = More vents outside.
steam-bath-more-vents-always-help-reply = The vent is beyond the OSB. The water comes from the room.
steam-bath-film-knows-the-season = Nothing. It is winter, so the film is tight.
steam-bath-film-knows-the-season-reply = Winter does not tell the film. Over the steamy room it lets { $bath } stay, over a bedroom { $bedroom }, and that is wet too behind OSB in this cold.
steam-bath-film-closes-when-humid = Nothing. The film closes in steam.
# $verdict is a whole sentence.
task-outcome = The film has { $permeance }. { $verdict }
