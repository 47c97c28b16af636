### Lesson hour by hour.

## The page.

# $share is the part of the house's leaks that is in this roof.
# On the stage, where no control tells it; $ach is empty where two houses stand side by side.
given-case = the made-up town "{ $town }", { $humidity } in the room{ $ach ->
    [two] {""}
   *[other] , a house of { $ach } ACH50
}; { $given }; ACH50 is air changes an hour in a blower-door test
given = room { $room } all year, OSB sheathing and a variable film, facing north; { $area }; a house of { $volume }, { $share } of its leaks in this roof; the run begins in January, its film in September; all layers start in balance with air of { $start }
climate = Climate
day = Day: first year, then the last
# What the judged year is called.
settled = { $repeats ->
    [yes] year { $count } and each later one
   *[no] year { $count }, still changing
}
first-year = first year
today = Sheathing that day
today-note = { $date }; deck { $above }
peak = Sheathing, peak
peak-note = in { $month }; deck { $deck } in { $deck_month }
over = Sheathing over { $caution }
over-text = { $days ->
    [one] { $days } day
   *[other] { $days } days
}
over-note = deck { $days ->
    [one] { $days } day
   *[other] { $days } days
}; mold index up to { $mold } of 6
ran-off = Ran off from { $area } in a year
ran-off-note = { $ran_off } in all
change = Change over the year
date = { $month }, year { $year }
# $account is the verdict of the judged year, a sentence without its full stop; with $sheathing_worst it is told of the
# sheathing, so only the driest time is left to say.
year = { $account }. { $sheathing_worst ->
    [yes] It is driest in { $driest }, { $lowest }
   *[no] The sheathing is wettest in { $wettest }, { $soaked ->
        [no] { $highest }
       *[other] when it holds { $soaked }
    }, and driest in { $driest }, { $lowest }
}. So it is in { $settled }.
step-dry-us = { $density } lb/ft³ × { $thickness } in.
step-dry-us-grains = { $size } / 12 × 7000 gr/lb
step-dry-si = { $density } kg/m³ × { $thickness } mm
grains = { $amount } gr/ft²
grams = { $amount } g/m²
step-dry = The dry sheathing: density times thickness.
step-percent = One percent of that.
step-rise = From the driest day to the wettest of the judged year, in percent, times that.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

why-late-why = { $rate } over { $weeks } more weeks add { $points } MC to { $board }. Gain goes on until drying beats it.
why-late-ask = In a run the sheathing is wettest { $weeks } weeks after the coldest day. In those weeks { $board } still gains { $rate }. Why so late?
why-late-hint = What does the OSB do in those weeks, week by week?
why-late-right = Storage: the wood gains as long as more comes than goes.
why-late-one-check-decides = It does not matter. The check of the coldest day decides, and what it says is final.
why-late-one-check-decides-reply = That check knows one day and no storage. What lies in the wood by then is the sum of all the days before.
why-late-coldest-is-wettest = The coldest day must be the wettest. The run is wrong.
why-late-wet-roof-needs-vents = It is a roof leak. The spring rain gets in.
why-late-wet-roof-needs-vents-reply = There is no rain in this run. It is water the wood took up.
why-late-wet-roof-needs-vents-seems = A roof that is wet in spring has been rained on.
each-october-why = It rises by { $step } MC a year and does not level off. It does not dry back.
each-october-ask = Three Octobers in a run show { $years } MC in the sheathing. What do you do?
each-october-hint = Hold the three against each other. Where would the fourth one be?
# One more year of the list in the question.
each-october-next = { $years }, { $year }
each-october-right = Change something: the leaks, the indoor RH or the layers. Then run it again.
each-october-trust-the-trend-later = Wait. It will settle.
each-october-no-drops-no-problem = Nothing. There are no drops.
each-october-one-check-decides = Nothing. It passed the dew-point check.
north-and-south-why = At noon in late December the south side takes { $south } of the straight sun, the north side { $north }.
north-and-south-ask = The same roof, { $pitch } in 12, faces north on one side and south on the other, at { $latitude }° north. Which side is wetter at winter's end?
north-and-south-hint = What falls on the one side and not on the other?
north-and-south-right = North.
north-and-south-air-is-a-sponge = South. Its air is warmer, and warm air soaks up more water, like a sponge.
north-and-south-air-is-a-sponge-reply = Air that the sun warms gets no water by it. Its RH falls, and the wood beside it dries.
north-and-south-sun-does-not-matter = The same. It is one roof and one house.

old-house-why = The same leaks bring the same air as before, but its dew point goes from { $old } to { $new }, and the sheathing is at { $cold }.
old-house-ask = An old, drafty house had { $room } and { $before } in its rooms each winter, and its roof stayed dry. Then a humidifier holds them at { $after }. On such days the sheathing is at { $cold }. What does the roof do?
old-house-hint = What came up through the leaks before, and what comes now? Work out the dew point of both.
old-house-right = It begins to take up water in winter, since the leaks now bring damper air.
old-house-house-must-breathe = It stays dry. A house that breathes does not rot.
old-house-house-must-breathe-reply = It did stay dry, and it was drafty. But it was the air that kept it dry: its dew point of { $old } was below the { $cold } of the wood. Now it is { $new }, and the drafts bring it up.
old-house-more-vents-always-help = It stays dry if it gets more vents.
old-house-more-vents-always-help-reply = Vents take some of it out. Over a leaky ceiling they can also draw up more of this air, with its dew point of { $new }. Close the leaks or turn the humidifier off.
old-house-no-drops-no-problem = Nothing, as long as no drops show.
old-house-no-drops-no-problem-reply = Drops come late. Wood takes the water into itself as soon as the air at its face is damp, and a dew point of { $new } against { $cold } is more than damp.

## The beats

gauge = Sheathing
# The middle of the film, whose one day goes through the month: $part is night, morning, afternoon or evening; $outdoors and $moisture are put in.
film-said = { $part ->
    [night] { $month }, first week, at night
    [morning] { $month }, second week, in the morning
    [afternoon] { $month }, third week, in the afternoon
   *[evening] { $month }, last week, in the evening
}: { $outdoors } out, the sheathing is at { $moisture } and { $trend ->
    [up] takes up water
    [down] gives up water
   *[steady] holds its water
}, { $drops ->
    [yes] with drops on its face
   *[no] with no drop on its face
}.
beat-first-say = One year of a roof. In which month is its sheathing wettest?
beat-first-ask = Take a month in the picture, or choose from the list. Then the year runs.
beat-first-answer = Wettest in { $month }, at { $peak }. From { $low } in summer it took up { $water } on { $area }, and not one drop showed.
beat-first-also = { $flux }, { $points } points of wood moisture
beat-houses-say = Same roof, same room air. One house is tight, one is drafty.
beat-houses-ask = Bet on both before the year runs.
beat-houses-first = Tight, 1 ACH50, with a fan
beat-houses-second = Drafty, 10 ACH50
beat-houses-tight-ask = The tight house, room at { $room } all year: how wet does its sheathing get?
beat-houses-tight-under = It stays under { $caution }.
beat-houses-tight-over = Over { $damage }. It cannot breathe, so it rots.
beat-houses-tight-under-reply = Little room air gets up there. It peaks at { $tight }.
beat-houses-tight-over-reply = A tight house with no fan does get damp, and people saw that. With a fan it is at { $room }, and little of that air gets up. It peaks at { $tight }.
beat-houses-drafty-ask = And the drafty house, room at { $room } too?
beat-houses-drafty-under = It stays under { $caution }. It breathes.
beat-houses-drafty-over = Over { $damage }.
beat-houses-drafty-under-reply = Old drafty houses often were dry. But this air is at { $room }, and much of it leaks up. The cold wood takes its water: { $drafty }.
beat-houses-drafty-over-reply = Much room air leaks up, at { $room }. The cold wood takes its water: { $drafty }.
beat-houses-answer = { $tight } in the tight house, { $drafty } in the drafty one. The drafts brought { $water } more, on { $area } of roof.
beat-houses-also = { $flux }, { $points } points of wood moisture
beat-air-say = So why were old drafty houses dry? Dry the air of the room.
beat-air-ask = Slide the room humidity down until the sheathing and the deck, the boards over the vent space, both stay under { $caution } all year.
beat-air-yet = { $over ->
    [both] Not yet: sheathing and deck both go over { $caution } with the room at { $room }.
    [deck] Not yet: with the room at { $room } the sheathing stays under { $caution }, but the deck goes over it.
   *[sheathing] Not yet: with the room at { $room } the sheathing still goes over { $caution }.
}
beat-air-answer = At { $room } in the room the drafty house stays dry. The tight one could have { $before }. It was the dry air, not the drafts.
beat-air-also = sheathing up to { $peak }, deck up to { $deck }
# The boards over the vent space, and their line along the year.
deck = Deck
deck-peaks = { $soaked ->
    [yes] Deck soaked: { $water } of water or frost in it, on { $area }
   *[no] Deck (boards over the vent space) up to { $moisture }
}
