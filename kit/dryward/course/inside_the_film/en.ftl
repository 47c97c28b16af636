### Lesson inside the film.


## The page.

insulation-inside-the-film = Insulation inside the film
inside-face = RH on its room side
inside-face-note = other side { $outside }
mean = Mean of both sides
permeance = The film has
gain = Water gained
with-of-the-insulation = With { $share } % of the insulation inside it, the film is at { $temperature }, sees { $inside } on its room side and stands at { $film }
no-water-gathers-and = { $film }; no water gathers, and { $judge }.
outer = Outer
step-temperature-of-the-film = Temperature of the film: go down by the R-values.
step-rh-on-its-two = RH on its two sides, from the vapor line.
step-the-films-curve-in = The film's curve, in perms: straight on a log scale between its two ends.
at-or-below = at or below { $low } %
at-or-above = at or above { $high } %
step-the-films-curve = The film's curve { $end }.

## The picture.

share-of-the-r = share of the R that lies inside the film, %
rh-on-its-room = RH on its room side, %
alt-three-graphs-over = Three graphs over the share of the insulation that lies inside the film: its temperature, the relative humidity on its room side, and its permeance.
alt-with-inside-the = With { $now } % inside, the film is at { $warm }, sees { $damp } and has { $open }.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

filled-cavity-the-roof-goes-from = The roof goes from { $states } to { $states2 }
filled-cavity-the-roof-is = The roof is { $states }
filled-cavity-why = The film goes from { $warm } to { $cool }, its room face sees { $humid }, and it opens from { $first } to { $humid2 }. { $turned }, with { $share } of the R inside the film.
filled-cavity-ask = Someone fills the service cavity with { $inside }, under { $outside } outside the film. It is { $cold } outside, { $degrees } and { $rh } inside. What does the film do?
filled-cavity-right = It cools, feels damper air, and opens.
filled-cavity-label-r-is-wall-r = It gets better. More R is more R.
filled-cavity-label-r-is-wall-r-reply = More R inside the film makes the film colder.
filled-cavity-film-knows-the-season = Nothing. It is winter, so it is tight.
filled-cavity-film-closes-when-humid = It closes, since it is more humid.
why-empty-why = With { $resistance } in the cavity the film sits at { $warm } and { $humid } on its room face.
why-empty-ask = It is { $cold } outside and { $rh } inside. Why is the service cavity left nearly empty?
why-empty-right = So that the film stays warm and on the dry side.
why-empty-label-r-is-wall-r = To save money.
why-empty-label-r-is-wall-r-reply = R there would cost little. It would make the film cold.
why-empty-label-r-is-wall-r-seems = An empty space looks like work that was left out.
why-empty-film-closes-when-humid = So that the film can close.
why-empty-house-must-breathe = So that the house can breathe.
why-empty-house-must-breathe-reply = Nothing breathes there. The film must be airtight.
steam-bath-which-is-wet-still = which is wet still, so the fan comes first
steam-bath-and-the-roof-is = and the roof is { $left }
steam-bath-why = In this roof the bath brings { $bath }, a bedroom { $bedroom }. With a { $perms } film and little R inside it is { $less }, { $still }.
steam-bath-ask = A bathroom that stays steamy, { $degrees } and { $steam }, lies under the same vault, with { $resistance } inside the film, OSB outside, and { $cold } outdoors. What do you change?
steam-bath-right = More fan, less R inside the film or a tighter film there. Then work it out in the kit, and ask the designer.
steam-bath-more-vents-always-help = More vents outside.
steam-bath-more-vents-always-help-reply = The vent is beyond the OSB. The water comes from the room.
steam-bath-film-knows-the-season = Nothing. It is like any bedroom.
steam-bath-film-knows-the-season-reply = A bedroom brings { $bedroom }, and that is wet too behind OSB in this cold.
steam-bath-film-knows-the-season-seems = It is the same roof, the same film and the same winter.
steam-bath-film-closes-when-humid = Nothing. The film closes in steam.
tight-and-dry-the-film-stands-at = The film stands at { $found }. { $judged }
