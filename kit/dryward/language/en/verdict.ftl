### What a verdict says.  Most messages are pieces of a sentence: a small letter first, no full stop.

## The states

# As they stand in a sentence.
state = { $state ->
    [dry] dry
    [damp] damp
    [wet] wet
   *[unknown] not known yet
}
# As a head.
head = { $state ->
    [dry] Dry
    [damp] Damp
    [wet] Wet
   *[unknown] Not known yet
}

## Time

# $number is 1 to 12.
month = { $number ->
    [1] January
    [2] February
    [3] March
    [4] April
    [5] May
    [6] June
    [7] July
    [8] August
    [9] September
    [10] October
    [11] November
   *[12] December
}
# When something is at its worst.
in-month = { $number ->
    [1] in January
    [2] in February
    [3] in March
    [4] in April
    [5] in May
    [6] in June
    [7] in July
    [8] in August
    [9] in September
    [10] in October
    [11] in November
   *[12] in December
}
# When something would be at its worst: it takes longer than that month.
if-month-lasted = { $number ->
    [1] if January lasted
    [2] if February lasted
    [3] if March lasted
    [4] if April lasted
    [5] if May lasted
    [6] if June lasted
    [7] if July lasted
    [8] if August lasted
    [9] if September lasted
    [10] if October lasted
    [11] if November lasted
   *[12] if December lasted
}

## Amounts

# $share is a number of percent: the mass of the water over that of the dry wood.
moisture-content = { $share } moisture content
# Wood above what a moisture content still tells of.
soaked = over { $top }, soaked
# $amount is water or frost in the pores of soaked wood.
on-the-roof = { $amount } of water or frost in its pores, on { $area }
# Of the mold index, which goes from 0 to 6.
of-six = { $number } of 6
# An amount with the month it is reached in, as "in January" or "if January lasted".
amount-when = { $amount } { $when }

## Places; $layer, $inner and $outer are names of layers

in-the-whole = in the whole assembly
in-the-layer = in the { $layer }
at-the-face = { $side ->
    [inner] at the inner face of the { $layer }
   *[outer] at the outer face of the { $layer }
}
between = between { $inner } and { $outer }

## How wet at worst: one finding; $place is one of the places above

nothing-gathers = nothing gathers anywhere
found-wood-moisture = { $how ->
    [soaked] the { $layer } is soaked: it holds all it can, { $amount }
    [pores] the { $layer } is soaked: it holds { $amount }
    [pores-when] the { $layer } is soaked, most { $when }: it holds { $amount }
    [settles] the { $layer } would settle at { $amount }
    [settles-when] the { $layer } would settle at { $amount } { $when }
    [months] the { $layer } reaches { $amount }
    [months-when] the { $layer } reaches { $amount } { $when }
    [peaks] the { $layer } peaks at { $amount }
   *[peaks-when] the { $layer } peaks at { $amount } { $when }
}
found-cladding-moisture = { $how ->
    [peaks] the { $layer }, which the weather reaches, peaks at { $amount }
   *[peaks-when] the { $layer }, which the weather reaches, peaks at { $amount } { $when }
}
found-mold-index = the mold index reaches { $amount } { $face }
# $off runs off, which has its own part of the sum; $frost is whether the water is frozen at its worst.
found-free-water = { $frost ->
    [yes] { $how ->
        [gathers] up to { $amount } of frost gather { $place }
        [gathers-when] up to { $amount } of frost gather { $place } { $when }
        [runs-off] { $off } of frost run off { $place } in the year
        [both] up to { $amount } of frost gather { $place } (and { $off } run off in the year)
       *[both-when] up to { $amount } of frost gather { $place } { $when } (and { $off } run off in the year)
    }
   *[no] { $how ->
        [gathers] up to { $amount } of water gather { $place }
        [gathers-when] up to { $amount } of water gather { $place } { $when }
        [runs-off] { $off } of water run off { $place } in the year
        [both] up to { $amount } of water gather { $place } (and { $off } run off in the year)
       *[both-when] up to { $amount } of water gather { $place } { $when } (and { $off } run off in the year)
    }
}
# $amount is gained a day.
found-steady-gain = { $frost ->
    [yes] { $amount } of frost gather { $place }
   *[no] { $amount } of water gather { $place }
}
found-growth = each year adds { $amount }
found-carry-over = { $amount } need more than a year to leave
# $mold: why that humidity counts or does not; a full face needs no reason.  $limit is a humidity.
found-face-humidity = { $mold ->
    [full] the dampest face settles at { $amount } humidity, { $place }
    [grows] the dampest face settles at { $amount } humidity, { $place }, and mold can grow
    [cold] the dampest face settles at { $amount } humidity, { $place }, too cold there for mold
   *[below] the dampest face settles at { $amount } humidity, { $place }, below the { $limit } at which mold can start there
}
# The same of a month, if it lasted, which $when says.
would-face-humidity = { $mold ->
    [full] the dampest face would settle at { $amount } humidity { $when }, { $place }
    [grows] the dampest face would settle at { $amount } humidity { $when }, { $place }, and mold can grow
    [cold] the dampest face would settle at { $amount } humidity { $when }, { $place }, too cold there for mold
   *[below] the dampest face would settle at { $amount } humidity { $when }, { $place }, below the { $limit } at which mold can start there
}
found-winter-water = the winter leaves { $amount } at the cold face
found-night-frost = a night leaves { $amount } of frost
found-night-melt = a night melts { $amount } of snow
# $amount is a share in percent.
found-vent-share = { $none ->
    [yes] water comes, and the vent air can carry none of it
   *[no] { $amount } of what the vent air can carry comes
}
found-window-edge = the air at the edge of the pane is at { $amount }
found-window-glass = the air at the middle of the pane is at { $amount }

## What one finding is of: as the head of a row, and in a sentence

heading-wood-moisture = Moisture of the { $layer }
heading-cladding-moisture = Moisture of the { $layer }
heading-mold-index = Mold index { $face }
heading-free-water = Water { $place }
heading-growth = What each year adds
heading-carry-over = What stays from year to year
heading-steady-gain = Water gained { $place }
heading-face-humidity = Humidity of the dampest face
heading-window-edge = Relative humidity at the edge of the pane
heading-window-glass = Relative humidity at the middle of the pane
heading-winter-water = Water that a winter leaves at a cold face
heading-night-frost = Frost of one night
heading-night-melt = Snow that melts in one night
heading-vent-share = Water that comes over what vent air can carry at most
quantity-wood-moisture = the moisture of the { $layer }
quantity-cladding-moisture = the moisture of the { $layer }
quantity-mold-index = the mold index { $face }
quantity-free-water = the water { $place }
quantity-growth = what each year adds
quantity-carry-over = what stays from year to year
quantity-steady-gain = the water gained { $place }
quantity-face-humidity = the humidity of the dampest face
quantity-window-edge = relative humidity at the edge of the pane
quantity-window-glass = relative humidity at the middle of the pane
quantity-winter-water = water that a winter leaves at a cold face
quantity-night-frost = frost of one night
quantity-night-melt = snow that melts in one night
quantity-vent-share = water that comes over what vent air can carry at most

## What is limited

limit-wood-moisture = moisture of wood
limit-cladding-moisture = moisture of wood that the weather reaches
limit-mold-index = mold index
limit-free-water = free water or frost, with what ran off
limit-growth = water gained from year to year
limit-carry-over = water that needs more than a year to leave
limit-steady-gain = water gained in a state that never ends
limit-face-humidity = relative humidity of a face where air stays as it is
limit-window-edge = relative humidity at the edge of the pane
limit-window-glass = relative humidity at the middle of the pane
limit-winter-water = water that a winter leaves at a cold face
limit-night-frost = frost of one night
limit-night-melt = snow that melts in one night
limit-vent-share = water that comes over what vent air can carry at most

## How long: $limit is a moisture in percent, or "the caution level"

caution-level = the caution level
lasted-months = { $count ->
    [0] over { $limit } in no month
   *[other] over { $limit } in { $count } of 12 months
}
# What the months would bring if each of them lasted.
would-months = { $count ->
    [0] no month would take it over { $limit }
   *[other] { $count } of the 12 months would take it over { $limit }
}
never-over = never over { $limit }
over-less-than-a-day = over { $limit } for less than a day
over-days = { $count ->
    [one] over { $limit } for { $count } day
   *[other] over { $limit } for { $count } days
}
over-all-year = over { $limit } all year

## Whether it dries, and whither

leaves-within-the-year = { $toward ->
    [inward] what gathers leaves within the year, mostly inward
    [outward] what gathers leaves within the year, mostly outward
    [both] what gathers leaves within the year, both ways
   *[untold] what gathers leaves within the year
}
leaves-later = { $toward ->
    [inward] it needs more than a year to give its water back, mostly inward
    [outward] it needs more than a year to give its water back, mostly outward
    [both] it needs more than a year to give its water back, both ways
   *[untold] it needs more than a year to give its water back
}
stays-so = it stays so all year
grows-wetter = it never gives all of it back: each year ends wetter than it began

## The parts together

# How wet, and how long it is past its limit.
wet-and-how-long = { $wet }, { $long }
# The same of a month, if it lasted.
would-wet-and-how-long = { $wet }; { $long }
and-whether-it-dries = { $said }; { $dries }
sentence = { $head }: { $account }.
unknown = { $head }.

## What was not counted

left-out-rain = rain
left-out-framing = framing
left-out-leak = air leaks
left-out-storage = storage in the layers
left-out-time = time
left-out-sun = sun

## What decides: an uncertain input, and where it takes the answer

input-conductivity = the heat conduction of the { $layer }
input-permeance = the permeance of the { $layer }
input-sorption = the water the { $layer } holds
input-leak = the size of the air leak
input-long-share = the part of the air leak that seeps through the insulation
# $first and $last are states, as "dry".
decides-state = { $turn ->
    [same] { $input }: within its range { $first } at both ends
   *[turns] { $input }: within its range { $first } to { $last }
}
# $quantity is what is judged, as "the moisture of the deck"; the whole is the whole roof.
decides = { $turn ->
    [same] { $input }: within its range { $quantity } is { $low } to { $high }, { $first } at both ends
    [whole-same-flat] { $input }: within its range { $quantity } stays { $low }, and the whole is { $first } at both ends by another check
    [whole-turns-flat] { $input }: within its range { $quantity } stays { $low }, but by another check the whole goes from { $first } to { $last }
    [whole-same] { $input }: within its range { $quantity } is { $low } to { $high }, and the whole { $first } at both ends
    [whole-turns] { $input }: within its range { $quantity } is { $low } to { $high }, and the whole { $first } to { $last }
   *[turns] { $input }: within its range { $quantity } is { $low } to { $high }, { $first } to { $last }
}

## Errors

not-given = { $what ->
    [hours] The hours of hourly.simulate must be given, not { $value }.
    [months] The months of monthly.balance must be given, not { $value }.
   *[profile] The profile of steady.profile must be given, not { $value }.
}
criterion-without-source = The row { $id } of the criteria lacks its source or how it was read.
criterion-no-number = The row { $id } of the criteria has a limit that is no number.

## A verdict at the prompt, in one line. $state and $layer are names; $unit may be empty.

line = { $method ->
    [year] { $state }, of the year
    [months] { $state }, of the months
    [face] { $state }, of the face
    [winter] { $state }, of the winter
    [night] { $state }, of the night
    [vent] { $state }, of the vent
    [window] { $state }, of the window
   *[steady] { $state }, of the steady
}
line-worst = { $of ->
    [yes] worst: { $quantity } of { $layer }, { $value } { $unit }
   *[no] worst: { $quantity }, { $value } { $unit }
}
# $unit of the limit in plain letters, and as the tables have it in $sign.
line-unit = { $unit ->
    [percent-MC] % MC
    [of-6] of 6
    [kg-per-m2] kg/m2
    [kg-per-s-m2] kg/(s m2)
   *[other] { $sign }
}
line-dries = { $dries ->
    [within-the-year] dries: within the year
    [later] dries: later
   *[not] dries: not
}
line-after-line = { $first }; { $next }
