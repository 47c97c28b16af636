### Lesson hour by hour.

## The page.

# $share is the part of the house's leaks that is in this roof.
given = room { $room } all year, OSB sheathing and a variable film, { $area } of roof facing north; a house of { $volume }, { $share } of its leaks in this roof; all layers start in balance with air of { $start }
climate = Climate
day = Day of the two years
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
   *[no] The sheathing is wettest in { $wettest }, { $highest }, and driest in { $driest }, { $lowest }
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
why-late-one-check-decides = The model lags behind.
why-late-one-check-decides-reply = The lag is real. Wood fills up and empties slowly.
why-late-one-check-decides-seems = A peak that comes late looks like a fault of the run.
why-late-coldest-is-wettest = The coldest day must be the wettest. The run is wrong.
why-late-wet-roof-needs-vents = Spring rain.
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
north-and-south-air-is-a-sponge = South. Warm air holds more water.
north-and-south-sun-does-not-matter = The same. It is one roof and one house.
