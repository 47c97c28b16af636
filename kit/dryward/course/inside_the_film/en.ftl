### Lesson inside the film.

## The page.

# $roof is its insulation and its drywall.
given = room { $room }, outdoor air at { $humidity }, { $roof }
inside = Insulation inside the film
film = Film
inside-face = RH on its room side
inside-face-note = other side { $outside }
mean = Mean of both sides
permeance = The film has
gain = Water gained
# $water is where water gathers: a piece of a sentence.
gathers = With { $share } of the insulation inside it, the film is at { $temperature }, sees { $humidity } on its room side and has { $permeance }: { $water }.
# $settles is how dry the roof is.
no-water = With { $share } of the insulation inside it, the film is at { $temperature }, sees { $humidity } on its room side and has { $permeance }; no water gathers, and { $settles }.
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

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

# $before and $after are the state of the roof without the batt and with it.
filled-cavity-why = The film goes from { $warm } to { $cool }, its room face sees { $humid }, and it opens from { $first } to { $then }. { $changes ->
    [yes] The roof goes from { $before } to { $after }
   *[no] The roof is { $after }
}, with { $share } of the R inside the film.
filled-cavity-ask = Someone fills the service cavity with { $inside }, under { $outside } outside the film. It is { $cold } outside, { $room } and { $rh } inside. What does the film do?
filled-cavity-hint = How warm is the film once the cavity is filled, and what RH does it see there?
filled-cavity-right = It cools, feels damper air, and opens.
filled-cavity-label-r-is-wall-r = It gets better. More R is more R.
filled-cavity-label-r-is-wall-r-reply = More R inside the film makes the film colder.
filled-cavity-film-knows-the-season = Nothing. It is winter, so it is tight.
filled-cavity-film-closes-when-humid = It closes, since it is more humid.
why-empty-why = With { $resistance } in the cavity the film sits at { $warm } and { $humid } on its room face.
why-empty-ask = It is { $cold } outside and { $rh } inside. Why is the service cavity left nearly empty?
why-empty-hint = Fill the cavity on the page and watch the film: how warm it is, what RH it sees, what it does.
why-empty-right = So that the film stays warm and on the dry side.
why-empty-label-r-is-wall-r = To save money.
why-empty-label-r-is-wall-r-reply = R there would cost little. It would make the film cold.
why-empty-label-r-is-wall-r-seems = An empty space looks like work that was left out.
why-empty-film-closes-when-humid = So that the film can close.
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
steam-bath-film-knows-the-season = Nothing. It is like any bedroom.
steam-bath-film-knows-the-season-reply = A bedroom brings { $bedroom }, and that is wet too behind OSB in this cold.
steam-bath-film-knows-the-season-seems = It is the same roof, the same film and the same winter.
steam-bath-film-closes-when-humid = Nothing. The film closes in steam.
# $verdict is a whole sentence.
task-outcome = The film has { $permeance }. { $verdict }
