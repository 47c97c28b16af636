### Words in the pictures that several lessons share, and what the pictures say to those who cannot see them.

## What a quantity is called in a key

label-temperature = temperature
label-vapor-pressure = vapor pressure
label-saturation = saturation (100 % RH)
label-relative-humidity = relative humidity
label-dew-point = dew point
label-wet = water collects
label-drying = drying
label-air-flow = moving air
label-heat = heat flow
label-moisture-content = wood moisture
label-frost = frost
label-limit = limit
label-permeance = permeance
label-outdoor-air = outdoor air
label-room-air = room air
label-cavity-air = cavity air
label-here = you are here

## Axes

# First letter of a month, 1 to 12.
month-letter = { $number ->
    [1] J
    [2] F
    [3] M
    [4] A
    [5] M
    [6] J
    [7] J
    [8] A
    [9] S
    [10] O
    [11] N
   *[12] D
}
# Over the highest point of a year's curve.
peak-in = { $moisture } in { $month }
# Wood so wet that its moisture says little: more than its fibers can bind is water or frost in its pores.
over-the-gauge = over { $top }
soaked-in = Soaked in { $month }: { $water } of water or frost in it, on { $area }
# Beside the bars of a month: what lies in the roof, what the month brings to it and what it takes.
month-held = held
month-comes = comes
month-leaves = leaves
month = month
days = days
year-number = year { $number }
case = case
wood-moisture-axis = wood moisture, mass %
temperature-axis = temperature, { $unit }
vapor-pressure-axis = vapor pressure, { $unit }
depth-axis = depth from the room, { $unit }
resistance-axis = share of vapor resistance, from room
water-in-layers-axis = water in all layers, { $unit }
water-gained-axis = water gained, { $unit }
drying-axis = drying, { $unit }; below zero water comes in
outward = outward
inward = inward
share-of-limit-axis = share of the damage limit, %
months-of-water-axis = { $unit }; down is drying
# What was varied, with the unit it is shown in.
with-unit = { $what }, { $unit }

## Keys and names in the drawings

saturation = saturation
touching-is-wet = touching: wet
dew-point-depth = dew-point depth
# Of a wet face: its two arrows, one away from it and one to it.
leaves = leaves a wet face
comes-in = comes to it
room = room
outside = outside
water-in = water in
water-out = water out
a-month = { $unit } a month
wetting = wetting
drying = drying
held = held, carried over
# Beside a line to judge by.
limit-line = { $amount } { $words }
caution = caution
decay = decay
above-the-chart = above the chart
finding = { $what }: { $state }

## In words: what any picture says

verdict = { $said } Verdict: { $state }.
without-limit = without limit

## In words: the section

section = Section from inside to outside: { $layers }.
layer-after-layer = { $first }; { $next }
temperature-falls = The temperature falls from { $room } in the room to { $outside } outside.
temperature-rises = The temperature rises from { $room } in the room to { $outside } outside.
no-dew-point-depth = No plane is as cold as the dew point of the room air.
dew-point-depth-is = The dew-point depth of the room air is { $depth } from the room side.
water-collects-inside = Water collects inside the { $layer }, { $rate }.
water-collects-between = Water collects between { $inner } and { $outer }, { $rate }.
no-water-collects = No plane collects water.
# $inward and $outward are rates; a side that water comes from is "in", one that it leaves to "out".
wet-layer-would = { $ways ->
    [out-out] A wet layer at { $depth } would dry { $inward } inward and { $outward } outward.
    [in-out] A wet layer at { $depth } would take in { $inward } from the room and lose { $outward } outward.
    [out-in] A wet layer at { $depth } would lose { $inward } to the room and take in { $outward } from outdoors.
   *[in-in] A wet layer at { $depth } would take in { $inward } from the room and { $outward } from outdoors.
}
construction = Section of { $name } from inside to outside, { $thick } thick: { $layers }.

## In words: the graph of vapor pressure

vapor-graph = Graph of vapor pressure, from { $room } in the room to { $outside } outside, under the saturation line.
highest-humidity = The highest relative humidity is { $humidity } at a depth of { $depth }.
lines-touch = { $wet ->
    [yes] The two lines touch: water collects.
   *[no] The two lines do not touch.
}

## In words: a year of wood moisture

# $span is how long; the last of several named years is the one that counts.
moisture-year = { $named ->
    [yes] Wood moisture of { $plane } over { $span }: it starts at { $start }, in the last year peaks at { $peak } in { $month } and ends at { $end }.
   *[no] Wood moisture of { $plane } over { $span }: it starts at { $start }, peaks at { $peak } in { $month } and ends at { $end }.
}
the-wood = the wood
span = { $days } days
span-and-year = { $span }, { $year }
span-then-year = { $span }, then { $year }
other-peaks = The { $plane } peaks at { $peak } in { $month }.
over-lines = { $named ->
    [yes] It is over { $lines }, in the last year.
   *[no] It is over { $lines }.
}
line-after-line = { $first }; { $next }
line-over = { $words }, { $limit }
line-over-for = { $words }, { $limit }, for { $time }
the-limit = the limit
below-lines = { $named ->
    [yes] It stays below every line in the last year.
   *[no] It stays below every line.
}
less-than-a-day = less than a day
so-many-days = { $count ->
    [one] { $count } day
   *[other] { $count } days
}
wettest-month-brings = The wettest month brings { $amount }.
on-day = On day { $day } it is at { $moisture }.
two-years = Wood moisture of two roofs on the same axes.
one-of-two-years = { $name }: starts at { $start }, peaks at { $peak }, ends at { $end }.
one-of-two-years-over = { $name }: starts at { $start }, peaks at { $peak }, ends at { $end }, over { $limits }.

## In words: twelve months

twelve-months = Twelve months of wetting and drying.
no-month-collects = No month collects water.
collects-in = Water collects in { $months }.
month-after-month = { $first }, { $next }
most-is-held = Most is held at the end of { $month }: { $amount }.
all-dries-out = All of it dries out within the year.
carried-over = At the year's end { $amount } are carried over.

## In words: what is drawn of a result at a prompt

water-in-layers = Water in all layers: { $least } at least, { $most } at most, { $end } at the end.
cases = Water gained in { $count } steady states: { $states }.
so-many-of-a-state = { $count } { $state }
state-after-state = { $first }, { $next }
state-along = The state along { $what }: { $states }.
value-and-state = { $value } { $state }
dries-both-ways = A wet layer dries { $inward } inward and { $outward } outward.
none-of = There is no picture of { $given }.

## On the stage

air-of-room = Room: { $temperature }, { $humidity }
air-of-outdoors = Outdoors: { $temperature }, { $humidity }
dew-point-line = dew-point line
gathers-here = { $frost ->
        [yes] Frost: { $amount } a day
       *[no] Water: { $amount } a day
    }
face-is = Inner face: { $temperature }, { $humidity }

dart-stands-for = Each small arrow is { $air } of moving air.
neutral-level = neutral level
neutral-over = neutral level: over the roof
neutral-under = neutral level: under the floor
air-in = { $air } in
air-out = { $air } out
air-of-fan = { $way ->
        [in] fan { $air } in
       *[out] fan { $air } out
    }
dots-stand-for = Amounts are for one roof. { $number } dots a minute: { $amount }.
