### The page of a lesson: what its frame, its controls, its desk and its lines of arithmetic say.

## The page

# Under the picture; $state is a head such as "Wet".
state-and-sentence = { $state }. { $sentence }
# Under the picture, in small type: what no control moves. $held is a list of the two below and of a lesson's own.
given = Given: { $held }.
given-air = { $temperature } and { $humidity }
# Of a roof whose leaks are those of a house, while amounts of water are told on another one.
given-area = { $area } of roof (amounts are for { $told })
# $fill is a thickness, $drywall how open it is to vapor.
given-roof = { $fill } of fiber, painted drywall { $drywall }, no air leak
# $kind is the name of an error.
not-worked-out = This page could not work that out ({ $kind }). Move a control back.
not-done = This page could not do that ({ $kind }). Run its cell again to start afresh.
not-of-the-browser = This page did not understand what the browser sent; run its cell again.
of-another-version = This page was drawn by another version of the kit; run its cell again.
# What stands in the place of a page when no kernel runs.
standing = A lesson page of dryward: run this cell to see its picture and move its sliders.
# $lessons are one or more of the message after this.
best-after = Best after { $lessons }.
numbered-lesson = lesson { $number }, { $title }
lesson-after-lesson = { $first }; { $next }
sources-fold = Where the numbers come from
limits-fold = { $picture ->
    [yes] What this picture leaves out
   *[no] What the lessons leave out
}

## What the browser shows by itself.  What stands in braces in quotes is put in there: keep it as it is.

js-switches = How this page is shown
js-us = US
js-us-title = US units
js-si = SI
js-si-title = SI units
js-projector = Projector
js-projector-title = Large type
js-instructor = Instructor
js-instructor-title = Unlocked, with a show of hands; R shows what is so, N and B go on and back
js-prediction = Your prediction
js-hand-fewer = One hand fewer: { $choice }
js-hand-more = One hand more: { $choice }
js-marked-right = ✓ { $choice }
js-reveal-key = Reveal (R)
js-hide-key = Hide the answer (R)
# $needs is which lessons it comes after.
js-guess-locked = Choose one to uncover the drawing and unlock the sliders. A wrong guess costs nothing. { $needs }
js-guess = A wrong guess costs nothing. { $needs }
# The choice follows.
js-you-predicted = You predicted:{" "}
js-what-is-right = What is right?
js-hide = Hide the answer
# Before the reply to a prediction.
js-bet-right = ✓ Right.
js-bet-not-right = ✗ Not so.
js-again = Predict again
js-checks = Checks
js-new-numbers = New numbers
js-right = ✓ right
js-not-right = ✗ not this one
js-asked = { $number }. { $question }
# Before the text of a warning.
js-titled = { $title }:{" "}
js-still = Do you still say so?
js-still-hint = This is often said on the job. Say for each whether you would.
# Over the checks, as long as they are not all answered.
js-still-waits = Once each is answered right, one thing more is asked here: whether you still say what is often said on the job.
js-still-yes = I still say so
js-still-no = Not any more
js-still-back = Back to the picture
js-on = The way on
# $lesson is the number and the title of a lesson.
js-on-named = Open it from your list of lessons: { $lesson }
js-controls = Controls
js-in-use = Control to move
js-arithmetic = The arithmetic, step by step
js-lesson = Lesson { $number }: { $title }
js-takeaway = On the job
js-cautions = Take care
js-covered = The drawing is covered until you have predicted.
js-typed = { $label }, typed
js-amount = { $number } { $unit }
js-below-zero = −{ $number }
js-play = Play
js-pause = Pause
js-play-one = Play { $label }
js-so-many-of = { $done } of { $total }
first-the-bet = First lay your bet on this step.
js-beat-of = Step { $at } of { $count }
js-next-beat = Next
js-beat-before = Back
js-to-the-bench = To the full page
js-to-the-beats = Start over, step by step
js-lay-bet = That is my bet
js-your-bet = You bet: { $choice }
js-show-it = Show it
js-hands-up = Hands up, one choice after the other.
js-next-bet = To the next bet
js-keys-bet = Keys: R shows what is so, N goes on, B goes back. N shows a bet first.
js-keys-move = Keys: N goes on, B goes back. This step has no bet to show: R takes hold of its control, and the arrow keys move it.
js-hold-vapor = Stop the dots
js-read-aloud = Read aloud
js-film = The year as a film
js-film-play = Play the year
js-film-stop = Stop here
js-film-at = Time of the year
js-film-hint = Tap the picture or press the space bar to stop. One day stands for each month.
# Two roofs side by side: what each is called, and the moisture of its wood.
js-film-two = { $month }. { $first }: { $one }. { $second }: { $two }.

## The sliders that all lessons share

slider-t-out = Outdoor temperature
slider-rh-out = Outdoor humidity
slider-sky = Sky colder than the air by
# In the unit of the slider.
slider-wind = { $system ->
    [us] Wind: 0.53 calm, 1.41 breeze, 3.52 windy
   *[si] Wind: 3 calm, 8 breeze, 20 windy
}
slider-t-in = Indoor temperature
slider-rh-in = Indoor humidity
slider-t = Temperature
slider-rh = Relative humidity
slider-water = Water made in the house
slider-fresh-air = Fresh air
slider-m-in = Inner membrane
slider-m-out = Outer layer
slider-r-ins = Insulation
slider-r-out = Insulation outside the sheathing
slider-r-in = Insulation inside the membrane
slider-gap-share = Share of the membrane missing
slider-dp-vapor = Vapor pressure difference
slider-hole = Hole in the ceiling
slider-dp = Air pressure across it
slider-ach50 = Air changes at 50 Pa
slider-gap = Vent gap
slider-air = Air speed in the gap
# What a sentence about its number calls a slider whose words do not fit there.
said-sky = Difference between air and sky
said-wind = Heat exchange with the air

must-be-a-number = { $what } must be a number, not { $given }.
# As in: There is no choice of "weather" ...; $what is its label.
choice-of = choice of { $what }

## The state along a control

every-option = { $state } with every one of them
some-options = { $state } with { $options }
# An option may have commas of its own, so each stands in quotes.
option-with-state = "{ $option }"
option-after-option = { $first }, { $next }
state-after-state = { $first }. { $next }
not-known-yet = Not known yet: { $done } of { $count } worked out
every-setting = { $state } at every setting
# One stretch of a slider, from left to right; $state is dry, damp or wet, the numbers are those at its ends.
stretch = { $how ->
    [below] { $state } below { $high }
    [above] { $state } above { $high }
    [up-to] { $state } up to { $high }
    [at-least] { $state } at least { $high }
    [behind-above] { $state } above { $low }
    [behind-below] { $state } below { $low }
    [from-on] { $state } from { $low } on
    [on-to] { $state } up to { $low }
    [just-above] { $state } just above { $low }
    [just-below] { $state } just below { $low }
    [at] { $state } { $low }
    [between] { $state } between { $low } and { $high }
    [above-to] { $state } above { $low } to { $high }
    [below-to] { $state } below { $low } to { $high }
    [to-just-below] { $state } { $low } to just below { $high }
    [to-just-above] { $state } { $low } to just above { $high }
   *[from-to] { $state } { $low } to { $high }
}
stretch-after-stretch = { $first }, { $next }
# A number under the picture that there is not.
no-number = none

## Where water gathers

inside-layer = inside the { $layer }
between-layers = between { $inner } and { $outer }
no-water-gathers = no water gathers
# $place is one of the two above: pieces of a sentence.
gather = { $amount } gather { $place }
gather-elsewhere-too = { $amount } gather { $place }, and { $rest } elsewhere
# $gathers is one of the two above.
too-little = { $gathers }, too little to count
too-little-but = { $gathers }, too little to count, but { $found }
of-it = { $amount } of it { $place }
no-water-dampest-face = no water gathers; dampest face { $humidity }
no-water-wood = no water gathers; wood would settle at { $amount } moisture
just-under = just under { $amount }

## Lines of a hand calculation

times = { $number } times
most-at = { $words } The most there can be at { $temperature } is { $most }.
share-of-most = { $share } × { $most }
# What is taken off in a sum, where it is below zero.
in-brackets = ({ $amount })
plane-formula = { $system ->
    [us] { $room } − ({ $room } − { $outside }) × R { $before } / { $total }
   *[si] { $room } − ({ $room } − { $outside }) × RSI { $before } / { $total }
}
flow-formula = { $system ->
    [us] ({ $high } − { $low }) × { $much } perm × 24 h
   *[si] ({ $high } − { $low }) × { $much } ng/(s m² Pa) × 86 400 s / 10⁹
}
temperature-there = Temperature { $place }: go down by the R-values.
temperature-at-another = Water gathers up to another face. Temperature { $place }: go down by the R-values.
most-there = The most vapor pressure that place can have: that of air at 100 % as cold.
vapor-of-the-room = { $arrives ->
    [yes] If it is at that limit: vapor that arrives from the room.
   *[no] If it is at that limit: vapor that leaves to the room.
}
vapor-of-outdoors = { $arrives ->
    [yes] And vapor that arrives from outdoors.
   *[no] And vapor that leaves to outdoors.
}
rest-stays = More arrives than leaves, and the rest stays.
less = { $more } − { $less }
no-water-stays = More could leave than arrives: it stays below its limit, and no water stays.
how-far-below = How far below: on the straight line from the room to outdoors it has { $pressure }.
share-formula = { $held } / { $limit } × 100

## Questions and tasks for the sliders

right = Right.
# After the first wrong answer; $hint is one or two sentences.
hint = Look once more. { $hint }
# To who still says so; $right and $here are whole sentences.
belief-held = What is so: { $right }
belief-denied = What is so: { $right } See it on this page. { $here }
# To who does not say so any more: what is true in it.
belief-left = This much of it is true: { $grain }
on-next = Next: { $number }. { $title }
on-index = Back to { $title }
task = Try it: a job for the sliders
task-start = Put the sliders at the start
task-check = Check my sliders
task-first-start = First put the sliders at the start.
task-stays = Not yet. { $control } stays as it is in this task; set it back.
task-not-yet = Not yet. { $why }
task-solved = Solved. { $why }

## The page of pictures for the instructor

gallery-head =
    # One picture for each lesson

    Each drawing is what the full page of a lesson shows before a slider is moved. Use them to find a lesson, or for a slide.
    Let the class go through the steps first: the picture gives them away.
gallery-lesson =
    ## { $number }. { $title }

    { $question }

    ![{ $picture }]({ $file })

    { $sentence }
pictures-not-written = The pictures cannot be written to { $folder }: { $why }.

## The desk: the roof's file

plain-file-name = The file name "{ $name }" must be a plain name such as my-roof.toml, without a folder.
plain-weather-name = The weather file "{ $name }" must be a plain name such as town.epw, without a folder.
file-too-large = { $name }: it is larger than { $most } bytes, too large for a roof.
no-text-file = { $name }: it is not a text file.
file-not-written = { $name }: it cannot be written ({ $why }).
file-not-kept = { $name }: it cannot be kept while it is read ({ $why }).

## The desk: place and room

place-and-room = Place and room
room-kind-constant = held, in winter and in summer
room-kind-class = by humidity class (ISO 13788)
room-kind-by-outdoor-temperature = by outdoor temperature (EN 15026)
room-kind-moisture-balance = from water made and fresh air
place-kind-demo = an invented place
place-kind-file = a weather file (EPW)
place-kind-means = twelve typed means
climate-from = Climate from
place = Place
file-in-folder = File in your folder
from-this-computer = or from this computer
code-zone = Code climate zone
code-zone-hint = such as 6 or 4C
monthly-temperatures = January to December, { $unit }
monthly-humidities = Humidity, %
# Between the twelve numbers that are typed.
typed-after-typed = { $first }, { $next }
# The same in a language whose decimal mark is a comma.
typed-after-typed-comma = { $first }; { $next }
room-air = Room air
room-temperature = Room temperature
room-winter-temperature = Winter temperature
room-winter-humidity = Winter humidity
room-summer-temperature = Summer temperature
room-summer-humidity = Summer humidity
room-class = Class
room-use = Use
room-use-normal = normal
room-use-high = high
water-made = Water made, { $unit }
fresh-air = Fresh air, { $unit }
design-year = Design year

## The desk: leaks, vents, framing and the hourly run

build = Leaks, vents, framing and the hourly run
tested = Blower-door number known
air-changes = Air changes an hour at 50 Pa
house-volume = House volume
roof-area = Roof area
share-of-leaks = Share of leaks in the roof
height-above-neutral = Height above the neutral level
vents-known = Vent openings known
eave-to-ridge = Eave to ridge
eave-opening = { $system ->
    [us] Eave opening, in² for each ft
   *[si] Eave opening, cm² for each m
}
ridge-opening = { $system ->
    [us] Ridge opening, in² for each ft
   *[si] Ridge opening, cm² for each m
}
count-framing = Count framing
framing-through = Framing runs through
framing-share = Share
slope = Slope
faces = Faces
# Degrees from north.
faces-0 = north
faces-90 = east
faces-180 = south
faces-270 = west
covering = Covering
# Share of the sun that the covering takes in.
covering-30 = pale
covering-50 = middle
covering-70 = gray or brown
covering-90 = dark
layers-start-at = All layers start at
years-at-most = Hourly run, years at most
roof-needs-name = The roof needs a name.
no-framing = This roof counts no framing.

## The desk: layers

head-layer = Layer, inside first
head-made-of = Made of
head-thickness = Thickness
head-resistance = R
head-vapor = Vapor
head-source = Source
head-found = Found
head-heat = Heat
name-of-layer = Name of layer { $number }
add-or-replace = Add or replace here
add-or-replace-at = Add or replace at { $layer }
move-inward = Move { $layer } inward
move-outward = Move { $layer } outward
remove = Remove
remove-layer = Remove { $layer }
thickness-of = Thickness of { $layer }
resistance-of = Thermal resistance of { $layer }
permeance-of = Permeance of { $layer }
sheet = sheet
air-space = air space
# A material: its R in one inch.
r-per-inch = R-{ $number } per in.
vented = vented
open = open
dry-and-humid = { $dry } dry, { $humid } humid
add = Add
add-outside = Add { $thing } outside of { $layer }
replace = Replace
replace-by = Make { $layer } of { $thing }
outermost-there = The layer { $layer } is already the outermost there.
layer-needs-name = A layer needs a name.
resistance-above-zero = Thermal resistance of { $layer } is { $value }; it must be above 0 m² K/W.
layer-is-a-sheet = The layer { $layer } is a sheet: it has no value for a thickness.

## The desk: things of the reader's own

own = A material or membrane of your own
own-name = Name
own-conductivity = Conductivity
own-permeability = Vapor permeability
own-density = Density
own-add-material = Add this material
own-film = Membrane
own-dry = Dry cup
own-wet = Wet cup (empty: one value)
own-add-cups = Add by cups
own-curve = Curve: mean RH of the two faces, then permeance
own-add-curve = Add by curve
own-hint = It opens with the mean humidity of its two faces. Take the values from a data sheet, and keep the sheet.
own-needs-name = It needs a name.
own-curve-point = A point of the curve is written like "30 % 0.5 perm", not "{ $typed }".
# What a thing of the reader's own is called until it is named.
own-material = own material
own-membrane = own membrane
typed-by-reader = typed by the reader
readers-data-sheet = from the reader's data sheet

## The desk: logger files

guess = What the kit assumed about this file; change what is wrong
column-title = { $number }. { $title }
no-title = no title
column-holds = holds
column-unit = unit
column-place = place
place-not-said = not said
head-column = Column
head-holds = Holds
head-unit = Unit
head-place = Place
between-cells = Between cells
cells-comma = comma
cells-semicolon = semicolon
cells-tab = tab
cells-upright-line = upright line
decimal-sign = Decimal sign
decimal-point = point
decimal-comma = comma
lines-above = Lines above the readings
dates = Dates
dates-ymd = year, month, day
dates-mdy = month, day, year
dates-dmy = day, month, year
clock = Clock
lines-above-whole = The lines above the first reading must be a whole number, not "{ $given }".
no-outer-layer = The roof { $roof } has no outer layer that a logger could sit at.

## The desk: checks

the-checks = The checks
the-comparison = The comparison
# $what is one of the two above.
came-to-nothing = { $what } could not be worked out ({ $kind }). Change a layer and try again.
stop = Stop
percent-worked-out = Percent worked out
getting-ready = Getting ready; the first run on a machine takes some seconds.
checks = Checks, side by side
run-checks = Run all checks
run-uncertain = Run with uncertain inputs
run-uncertain-title = { $draws } draws of the layers' properties: half a minute or more
changed-since-checks = The roof has changed since these checks: run them again.
band-hint = A band shows how far the layers' usual ranges carry a number. The steady checks always have one; the hourly years get theirs with uncertain inputs.
asked-and-said = { $asked } { $said }.
first-change = First: { $change }
number-of = { $label }: { $amount }
number-after-number = { $first }; { $next }
small-after-small = { $first } — { $next }

## The desk: two roofs or two climates

compare = Two roofs or two climates
compare-with = Compare with
compare-again = Compare again
choose-one = choose one
as-saved = this roof as it was saved
in-climate = this roof in a { $place } climate
your-file = your file { $name }
changed-since-comparison = The roof has changed since this comparison.
typed-means = typed means
now = now
the-other = the other
nothing-found = nothing found
finding-at = { $state }. { $amount }
said-with-numbers = { $said }. { $numbers }
both-are = { $hourly ->
    [yes] Hour by hour both are { $state }.
   *[no] By the checks that were run both are { $state }.
}
one-and-other = { $hourly ->
    [yes] Hour by hour { $one } is { $first }, and { $other } is { $second }.
   *[no] By the checks that were run { $one } is { $first }, and { $other } is { $second }.
}
account-of = { $name }: { $account }.

## The desk: the printed page

print = The printed page
print-first-check = Run all checks first: the page prints what they found.
print-not-written = { $name }: it cannot be written ({ $why }); save it with the link instead.
print-written = { $name } stands in your folder.
paper = Paper
paper-letter = US letter
paper-a4 = A4
print-pdf = Make the PDF
print-html = Make the web page
save-file = Save { $name }
