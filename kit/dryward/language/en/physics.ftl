### Physics: one line for each result at the prompt, and what is said where a case cannot be worked out.

## Results in one line. $state is "dry", "damp", "wet" or "not known yet" (names.ftl); $name is the roof's.

profile-line = { $name }, { $first } to { $last }: { $state }, at most { $most } { $within ->
    [yes] in { $inner }
   *[no] between { $inner } and { $outer }
}
# $counts is a list of the message after this.
sweep-line = { $count ->
    [one] { $name }, { $count } steady state: { $counts }
   *[other] { $name }, { $count } steady states: { $counts }
}
so-many = { $count } { $state }
drying-line = { $inward } inward, { $outward } outward, at { $at }
no-limit = no limit
# $variable is a word of the code; $runs is a list of the message after this.
range-line = { $variable }: { $runs }
run-of-states = { $alone ->
    [yes] { $state } { $first }
   *[no] { $state } { $first } to { $last }
}
# $ending is "no wetting", "dries", "holds" or "grows" (names.ftl).
months-line = { $wetted ->
    [yes] { $name }: { $state }, { $ending }, at most { $most } held
   *[no] { $name }: { $state }, { $ending }
}
# $wet is a sentence of verdict.ftl without its full stop.
hours-line = { $leaking ->
    [yes] { $name }, { $hours }, leak: { $state }, { $wet }
   *[no] { $name }, { $hours }, no leak: { $state }, { $wet }
}

## Steady states and months.

sweep-shapes = The arrays of a sweep do not fit together in shape.
sweep-empty = The arrays of a sweep are empty; they must hold at least one number.
no-steady-permeance = The layer { $layer } found no steady permeance in { $rounds } rounds; its curve may be too steep.
beyond-the-vent-space = The layer { $layer } lies beyond the vent space: it dries into the vent air itself.
no-steady-room = A room that follows a rule has no steady state; give one air, or the weather of a year.
months-do-not-settle = The twelve months do not settle in month { $month } beside the { $layer }.

## Hours.

whole-hours = Hours is { $given }; it must be a whole number, 1 to { $most }.
whole-years = Years is { $given }; it must be a whole number, 1 to 100.
whole-refinement = Refinement is { $given }; it must be a whole number, 1 to 50.
only-membranes = The assembly { $name } has only membranes; it needs a layer with a thickness.
two-vent-spaces = The assembly { $name } has two vent spaces; one can be simulated.
no-vent-space = Vent air is given, but the assembly { $name } has no vent space.
# $what begins the sentence.
one-an-hour = { $what } has { $count } numbers; it must have one, or one for each of { $hours }.
# How many numbers there are in each direction: "2 by 8760".
by = { $first } by { $next }
one-air = { $what } must be one air, not several.
no-room = The room must be an air or a rule for room air, not { $given }.
# Begins a sentence: "Water in deck is -3 kg/m³".
water-in = Water in { $layer }
holds-no-water = The layer { $layer } has no thickness, so it holds no water.
other-cells = The earlier run has other cells than this assembly, so it cannot go on from there.
stopped-after = The run was stopped after { $done } of { $total } hours.
batch-stopped = The batch was stopped.
# $place is a layer or the message after this.
no-hourly-answer = The hourly calculation found no answer in hour { $hour } of day { $day } (hour { $of_run } of the run), in { $place } at { $depth } from the room, where it was { $temperature } and { $humidity }.
between-two-membranes = the plane between two membranes
comparison-failed = The comparison by method of lines failed: { $said }
needs-a-year = The run has { $hours } hours; a monthly budget needs a whole year, { $year }.
no-place-of-sun = The weather has sun but no latitude and longitude, so where the sun stands is unknown.
part-of-the-sun = The weather has only a part of the sun; it needs direct and diffuse, or global.

## What can be varied, and what is uncertain. $what is a property, or a part of a leak.

room-by-rule = Room air that follows a rule has no temperature or humidity of its own to vary.
needs-a-surface = The { $what } can be varied only when the case has an outer surface with sun and sky.
needs-a-leak = The long share can be varied only when the case has a leak.
least-factor = Least factor on the { $what }
largest-factor = Largest factor on the { $what }
factors-fall = The factors on the { $what } are { $low } and { $high }; the second must be larger.
nothing-uncertain = Nothing in the assembly { $name } is uncertain; name what is.

## Mold, and the sky. Words in quotation marks are written so in code and stay.

species = The wood is "pine" or "spruce", not "{ $given }".
series-of-one-length = The mold index needs series of one length; they have { $first } and { $second } values.
model-takes-no-hour = The sky model "{ $model }" takes no hour and no pressure.
sky-model = The sky model is "clark-allen" or "berdahl-martin", not "{ $given }".
no-surface-temperature = A roof surface without emissivity, heat transfer coefficient and U-value has no temperature.
surface-not-found = The temperature of the roof surface was not found: check its sky, air and gains.
frost-not-found = The frost of a night was not found: check the air, the sky and the covering.
steps-of-night = { $what } has { $count } values; the night has { $steps } steps.
whole-number = { $what } is { $given }; it must be a whole number.
