### The report of one roof: its checks, its sentences, its page.
### $layer is a layer's name; amounts come with their unit; "kind" is wall or roof.

## The state and the answers (check)

state-dry = dry
state-damp = damp
state-wet = wet
state-not-known-yet = not known yet
# As they stand after a question.
answer-dry = Dry
answer-damp = Damp
answer-wet = Wet
answer-not-known-yet = Not known yet
answer-met = Met
answer-not-met = Not met
answer-cannot-tell = Cannot tell
answer-within-the-year = Yes, within the year
answer-later = Yes, but it takes more than a year
answer-not = No
answer-it-can = It can
# A code row before its answer.
row-asked = { $title }:

## The headline, and the small print beside it (check)

# $state is the state as a head, $account what was found, without its period.
headline =
    { $by ->
        [months] { $state } (by twelve monthly means alone, no air leak counted): { $account }.
        [no-leak] { $state } (hour by hour, no air leak counted): { $account }.
       *[leak] { $state } (hour by hour, with the air leak): { $account }.
    }
# $same: whether the state is the same without that leak.
with-assumed-leak =
    { $same ->
        [yes] With a leak of 3 air changes at 50 Pa, a fifth of it through here (assumed, not tested), it would be { $state } too.
       *[no] With a leak of 3 air changes at 50 Pa, a fifth of it through here (assumed, not tested), it would be { $state }.
    }
diffusion-is-worse = Plain diffusion says worse ({ $list }); it counts no storage, sun or leak.
# What stands in that list.
worse-twelve-months = { $state } over twelve months
worse-winter = { $state } if the coldest month never ended
worse-summer = { $state } if the warmest month never ended
rows-not-met =
    { $count ->
        [one] A code row is not met.
       *[other] { $count } code rows are not met.
    }
only-a-calculation = A calculation, not a permit, an inspection or an approval.
leaks-not-counted = Air leaks are not counted.
rain-not-counted = Rain is not counted.
weather-invented = The weather is invented.

## The questions, by the check

question-winter = How wet would it get if the coldest month never ended?
question-summer = How wet would it get if the warmest month never ended?
question-twelve-months = By twelve monthly means: how wet does it get, and does that water leave?
question-years =
    { $leak ->
        [yes] Hour by hour, with storage, sun and the air leak: how wet, how long, does it dry?
       *[no] Hour by hour, with storage and sun: how wet, how long, does it dry?
    }
question-wet-start = When the { $layer } is wet, does it dry?
question-vents = Are the vent openings as large as the code ratio asks?

## Names of the numbers under a check

number-outdoor-air = Outdoor air
number-outdoor-humidity = Outdoor humidity
number-room-air = Room air
number-room-humidity = Room humidity
number-highest-humidity = Highest humidity
number-water-gained = Water gained
number-winter-inward = Winter, inward
number-winter-outward = Winter, outward
number-summer-inward = Summer, inward
number-summer-outward = Summer, outward
number-most-held = Most held
number-held-at-the-end = Held at the year's end
number-growth = Growth a year
number-change = Change over the last year
number-ran-off = Ran off in the last year
number-humid-hours = Hours above 90 % humidity anywhere
number-repeats-after = Years until it repeats
number-years-run = Years run
number-balance-error = Balance error
number-time-to-dry = Time to dry
number-free-area = Free area, eave and ridge together
number-gap = Gap

## Amounts (document)

labelled = { $label }: { $amount }
# One number after the other.
numbers = { $first }; { $next }
amount-mass-percent = { $number } % MC
amount-of-six = { $number } of 6
amount-days = { $number } days
amount-hours = { $number } h
amount-years = { $number } years
amount-of-what-passed = { $number } of what passed
not-in-the-run = not in the run
straight-to-the-air = straight to the air
takes-in = takes in { $amount }
books-balance = none; the water books balance
band = { $shown } (band { $low } to { $high })

## The checks by physics (moisture_checks)

# What was found, as a sentence.
found = { $account }.
# What was found, and for how long.
finding = { $state }: { $found }.
steady-limits = A month that never ends: no storage, no air leak, no sun, no rain. What is dry here still needs air sealing.
steady-source = ISO 13788:2012 steady diffusion (read in secondary sources)
why-water-stays = More vapor arrives at that cold face than its outer side lets through.
why-near-a-limit = It is cold there for the vapor that comes: near a limit, with no water yet.
change-room-side = Make the room side tighter to vapor, hold the room drier, or open the layers outside that face.
change-outer-side = Make the outer side tighter to vapor, or open the layers on the room side of that face.
months-limits = Monthly means, diffusion only: no storage, no air leak, no sun. ISO 13788 says so itself.
months-source = ISO 13788:2012 monthly balance (read in secondary sources)
years-source = Hourly heat and moisture after EN 15026
# Why, and what to change first, by what is past its limit.
why-wood-moisture = Wetting outruns drying for part of the year.
why-mold-index = It is humid and warm there at the same time for too long.
why-free-water = More water comes to that place in the cold months than it can pass on.
why-growth = It takes in more than it gives back, storage and drying counted.
why-carry-over = Summer gives back less than was in it.
change-wood-moisture = Look at air leaks and room humidity first; then a tighter room side or a more open outer side.
change-mold-index = Hold the room drier in fall and spring, seal leaks, or open the outer side.
change-free-water = Seal air leaks first; then hold the room drier, or let that face soak up and give back.
change-growth = Seal air leaks first; then a tighter room side or a more open outer side.
change-carry-over = Give it a side to dry to: a more open room side, or a more open outer side.
run-off = Run off in the judged year: { $amount }.
one-section =
    { $kind ->
        [wall] One section of the wall between the framing.
       *[roof] One section of the roof between the framing.
    }
year-repeats =
    { $count ->
        [one] The year repeats after { $count } year, all layers at { $start } humidity at the start; the last one is judged.
       *[other] The year repeats after { $count } years, all layers at { $start } humidity at the start; the last one is judged.
    }
year-does-not-repeat =
    { $count ->
        [one] The year does not repeat within { $count } year, all layers at { $start } humidity at the start; the last one is judged.
       *[other] The year does not repeat within { $count } years, all layers at { $start } humidity at the start; the last one is judged.
    }
# $list is of the names of what a verdict leaves out.
left-out = Left out: { $list }.
leaks-left-out = air leaks (no blower-door number was given)
how-it-leaks = The leak is driven by the warmth of the house, without wind and fans. It is spread evenly, and { $share } of it seeps through the insulation (an assumption); a real one is a stream that wets one spot more.
no-openings-for-the-run = No vent openings were given: the vent space is taken to hold outdoor air.
mold-is-a-model = A mold index is a laboratory model, not an inspection for mold.
first-year = In the first year, from the start humidity of { $start }, the { $layer } peaks at { $peak }.

## A wet start (moisture_checks)

# $winter, $summer and $way are one of the ways below.
wet-start-differs = When the { $layer } is wet it { $winter } in winter and { $summer } in summer.
wet-start-always = When the { $layer } is wet it { $way }, winter and summer.
way-takes-in = takes in more than it gives off
way-neither = dries neither way
way-outward = dries mostly outward
way-inward = dries mostly inward
way-both = dries both ways
wet-start-why = Water leaves toward the side with the lower vapor pressure and the more open layers.
wet-start-change = Open one side to vapor: the room side, or the outer side.
wet-start-keep-dry = Keep it from getting wet, and open one side to vapor: the room side, or the outer side.
wet-start-limits = Rates of a wet layer at steady temperatures; they fall as it dries.
wet-start-days-limits = Rates of a wet layer at steady temperatures; they fall as it dries. The days are those of this one year of weather, without rain.
wet-start-source = Diffusion through the layers on each side
wet-start-days-source = Diffusion through the layers on each side; hourly heat and moisture after EN 15026
# $wood: whether the layer is wood, by its moisture content ($start and $limit in % MC), or not, by its humidity.
dries-within-the-year =
    { $wood ->
        [yes] By the hour, when the { $layer } starts at { $start } on January 1, its first whole day below { $limit } is day { $days }.
       *[no] By the hour, when all layers start at { $start } humidity on January 1, its first whole day below { $limit } humidity in its wettest part is day { $days }.
    }
dries-later =
    { $wood ->
        [yes] When the { $layer } is wet it takes more than a year to dry: when the { $layer } starts at { $start } on January 1, its first whole day below { $limit } is day { $days }.
       *[no] When the { $layer } is wet it takes more than a year to dry: when all layers start at { $start } humidity on January 1, its first whole day below { $limit } humidity in its wettest part is day { $days }.
    }
# $days is the length of the run.
dries-not =
    { $wood ->
        [yes] When the { $layer } is wet it does not dry: when the { $layer } starts at { $start } on January 1, it is not below { $limit } within { $days } days.
       *[no] When the { $layer } is wet it does not dry: when all layers start at { $start } humidity on January 1, it is not below { $limit } humidity in its wettest part within { $days } days.
    }

## What decides, and bands (all_checks, trials)

years-left-out = The hourly years were left out: no air leak, no storage and no mold was counted.
what-varies = Bands: 5 to 95 % of draws of the layers' properties from their ranges; air and weather as given.
# $leak: whether it is said of the assumed leak, right after what that leak decides.
nothing-decides =
    { $leak ->
        [yes] With that leak: no input in its range moves the answer by itself.
       *[no] No input in its range moves the answer by itself.
    }
decides =
    { $leak ->
        [yes] With that leak: what decides: { $decides }.
       *[no] What decides: { $decides }.
    }
# $inputs begins with a capital.
turns-too =
    { $count ->
        [one] { $inputs } can turn the answer too, alone.
       *[other] { $inputs } can turn the answer too, each alone.
    }
draws-agree =
    { $state ->
        [dry] All { $count } draws are dry.
        [damp] All { $count } draws are damp.
       *[wet] All { $count } draws are wet.
    }
draws-differ = Of { $count } draws { $list }.
# One part of that list.
draws =
    { $state ->
        [dry] { $count } dry
        [damp] { $count } damp
       *[wet] { $count } wet
    }

## The openings of a vent space, and the code rows (code_checks)

openings-not-given = No openings were given for the vent space.
give-the-openings = Type the net free area at eave and ridge.
openings-come-to = The openings come to 1/{ $ratio } of the roof area.
open-eave-and-ridge = Open the eave and the ridge, a little more low than high. First make the ceiling airtight.
vents-limits = A code ratio, not physics: how much a vent space carries follows from weather, leaks and gap.
openings-between-the-ratios = The openings have { $have } of eave, high and low together. That is between 1/300 and 1/150 of the roof area, which asks for { $conditions }. The high openings are taken as at the ridge: check on site.
# $share is the number under 1/..., $asked and $have free areas by length.
openings-enough = 1/{ $share } of the roof area is { $asked } of eave; the openings have { $have } of eave, high and low together.
openings-too-small = Even 1/{ $share } of the roof area is { $asked } of eave; the openings have { $have } of eave, high and low together.
# That another edition stands in place of the one asked for.
instead = { $instead }.
# A ruling of a code row.
ruling = { $head }: { $reason }.
foam-to-be-shown = that the foam is air-impermeable and without gaps must be shown; { $locally }
# $layers are the names of one or more layers, $asks and $have an R.
foam-not-known = whether { $layers } is air-impermeable is not known here; the row asks for { $asks } of it
foam-too-thin = even if { $layers } is air-impermeable there is only { $have } at or above the deck; the row asks for { $asks } of it
no-foam = no air-impermeable insulation is drawn at or above the deck; the row asks for { $asks } of it
no-foam-but-inside = no air-impermeable insulation is drawn at or above the deck; the row asks for { $asks } of it; { $layers } lies on the room side of other insulation
# $why is one of the four above.
or-a-port = { $why }; in an attic of this zone a vapor diffusion port is another way
# Where a row stands; $many: whether it is of several editions.
edition =
    { $many ->
        [yes] editions { $edition }
       *[no] edition { $edition }
    }

## The sentences for the client (sentences)

tell-us = Tell us at once of drips, stains or a musty smell.
dries-in-days-tell-us = What gets wet once can dry again, in about { $days } days by the hourly run; tell us at once of drips, stains or a musty smell.
dries-tell-us = What gets wet once can dry again, though how long it takes was not worked out; tell us at once of drips, stains or a musty smell.
rooms-not-run =
    { $kind ->
        [wall] How humid the rooms may be follows only from hourly years with the air leak, which were not run: ask us before you close this wall in, and run the fan.
       *[roof] How humid the rooms may be follows only from hourly years with the air leak, which were not run: ask us before you close this roof in, and run the fan.
    }
# $leak is one of the two below; $share, $lowest and $highest are humidities, $cold a temperature.
leak-as-tested = with the air leak as tested
leak-assumed = with 3 air changes at 50 Pa assumed, not tested
rooms-never-dry =
    { $kind ->
        [wall] By the hourly year, { $leak }, this wall does not stay dry at any room humidity from { $lowest } up: seal the leaks and change the layers first.
       *[roof] By the hourly year, { $leak }, this roof does not stay dry at any room humidity from { $lowest } up: seal the leaks and change the layers first.
    }
rooms-always-dry =
    { $kind ->
        [wall] By the hourly year, { $leak }, this wall stays dry up to { $highest } room humidity in winter ({ $cold } outside in the coldest month); windows will ask for less.
       *[roof] By the hourly year, { $leak }, this roof stays dry up to { $highest } room humidity in winter ({ $cold } outside in the coldest month); windows will ask for less.
    }
rooms-too-dry =
    { $kind ->
        [wall] By the hourly year, { $leak }, this wall stays dry only up to { $share } room humidity in winter, drier than most houses can be held: seal the leaks and change the layers first.
       *[roof] By the hourly year, { $leak }, this roof stays dry only up to { $share } room humidity in winter, drier than most houses can be held: seal the leaks and change the layers first.
    }
rooms-at-or-below = Keep the rooms at or below { $share } humidity in winter ({ $cold } outside in the coldest month), or lower if windows or cold corners get damp, and run the fan: by the hourly year, { $leak }, one point more is { $beyond }.

## The sentences for the inspector (sentences)

no-retarder = There is no vapor retarder on the room side of the insulation.
# $class is I, II or III; $dry and $wet are permeances; $section is where the classes are named.
retarder =
    { $opens ->
        [yes] Room side of the insulation: { $kind } ({ $dry } dry-cup, opening to { $wet } wet-cup), by the classes of { $section }, { $locally }.
       *[no] Room side of the insulation: { $kind } ({ $dry } dry-cup), by the classes of { $section }, { $locally }.
    }
retarder-of-class = a class { $class } vapor retarder
retarder-of-no-class = no vapor retarder by class
section-of-the-code = the IRC
section-and-edition = IRC { $section }, edition { $edition }
wall-without-vent-space = The wall has no vent space.
roof-without-vent-space = The roof has no vent space; the code rows of unvented roofs apply and stand below.
# $depth is of the vent space, $ratio the number under 1/...
vent-space = Vent space { $depth } deep; the openings were not given.
vent-space-cannot-tell = Vent space { $depth } deep, with openings of 1/{ $ratio } of the roof area; whether that meets the code ratio cannot be told from what was given, { $locally }.
vent-space-ruled =
    { $met ->
        [yes] Vent space { $depth } deep, with openings of 1/{ $ratio } of the roof area, which meets the code ratio, { $locally }.
       *[no] Vent space { $depth } deep, with openings of 1/{ $ratio } of the roof area, which does not meet the code ratio, { $locally }.
    }
# Between two ratios it is the conditions that decide.
vent-space-ruled-by-conditions =
    { $met ->
        [yes] Vent space { $depth } deep, with openings of 1/{ $ratio } of the roof area, which meets the code ratio (the smaller one, which asks for { $conditions }), { $locally }.
       *[no] Vent space { $depth } deep, with openings of 1/{ $ratio } of the roof area, which does not meet the code ratio (the smaller one, which asks for { $conditions }), { $locally }.
    }
tested = Blower door { $changes } air changes an hour at 50 Pa
not-tested = No blower-door test
by-hours = hourly heat and moisture after EN 15026
by-months = monthly diffusion after ISO 13788, no air leak counted
# $tested and $method are of those above, $state is the state, $account what was found.
proof =
    { $kind ->
        [wall] { $tested }; by { $method } the wall is { $state }: { $account }.
       *[roof] { $tested }; by { $method } the roof is { $state }: { $account }.
    }
# $years is a list such as "cold winter damp, damp house dry".
proof-and-other-years =
    { $kind ->
        [wall] { $tested }; by { $method } the wall is { $state }: { $account } ({ $years }).
       *[roof] { $tested }; by { $method } the roof is { $state }: { $account } ({ $years }).
    }
in-the-other-years =
    { $leak ->
        [yes] in the other design years, with the assumed leak: { $list }
       *[no] in the other design years: { $list }
    }
year-and-state = { $design } { $state }

## The design years, and what was checked (setting)

design-typical = typical
design-damp-house = damp house
design-cold-winter = cold winter
damper-than-given = { $design }, rooms { $points } points damper than given
colder-than-given = { $design }, { $difference } colder than given
# $of: whether the weather is given by the month or by the hour.
year-typical = A typical year: weather and room air as they are given, with no colder winter and no damper house.
year-damp-house = A damp house: the weather as it is given, and in the rooms { $points } points more relative humidity than given, all year; so much EN 15026 has between normal and high occupancy (from memory).
year-cold-winter =
    { $of ->
        [months] A cold winter: each month { $kelvin } K colder than given, at the same relative humidity, sun and wind, with less radiation from the sky; EN 15026 takes such a year for one in ten (from memory).
       *[hours] A cold winter: each hour { $kelvin } K colder than given, at the same relative humidity, sun and wind, with less radiation from the sky; EN 15026 takes such a year for one in ten (from memory).
    }
hours-given = hours given
invented-place = { $id ->
    [cold] cold (an invented place)
    [cool-marine] cool marine (an invented place)
    [hot-dry] hot dry (an invented place)
    [hot-humid] hot humid (an invented place)
    [mixed-humid] mixed humid (an invented place)
    [very-cold] very cold (an invented place)
   *[other] { $place } (an invented place)
}
weather-file = weather file
typed-means = typed monthly means
typed-means-have-no-hours = Typed means have no hours, so the hourly years are left out: wood moisture and mold were not checked.
zone-was-typed = Zone { $zone } was typed; it is not compared with the weather used.
layer-needs-thickness = The layer { $layer } needs a thickness, above 0 to 0.5 m.
input-place = Place
input-design-year = Design year
input-coldest-month = Coldest month
input-warmest-month = Warmest month
input-room-in-winter = Room air in winter
input-room-in-summer = Room air in summer
input-between-framing = Thermal resistance between framing
input-slope = Slope, facing
input-films = Surface films
# Thermal resistances of the still air in the room and of the moving air outside.
films = { $inside } inside, { $outside } outside
input-whole-assembly = Whole assembly, { $share } framing
input-blower-door = Blower door
input-air-leaks = Air leaks
input-vent-path = Vent path
input-hourly-years = Hourly years
input-covering = Covering takes in
place-and-zone = { $place }, zone { $zone }
air = { $temperature }, { $humidity }
room-by-class = by humidity class; { $air }
room-by-outdoor-temperature = by outdoor temperature; { $air }
room-by-moisture-balance = from water made and fresh air; { $air }
flat = flat
faces =
    { $assumed ->
        [yes] { $slope }, faces { $way }, assumed unless typed
       *[no] { $slope }, faces { $way }
    }
faces-north = north
faces-northeast = northeast
faces-east = east
faces-southeast = southeast
faces-south = south
faces-southwest = southwest
faces-west = west
faces-northwest = northwest
faces-degrees = { $azimuth }° from north over east
blower-door =
    { $kind ->
        [wall] { $changes } air changes an hour at 50 Pa, { $share } through the wall
       *[roof] { $changes } air changes an hour at 50 Pa, { $share } through the roof
    }
leaks-none = not counted
at-most-years = at most { $years }, all layers at { $start } at the start
of-the-sunlight = { $share } of the sunlight

## The page (document, printed)

legend = ✓ dry, met or dries; ◆ damp or slow; ▲ wet, not met or does not dry; ? not known
newest-edition = of the newest edition whose text was read, unless another was asked for
code-rows-are = Code rows: { $edition }; { $locally }.
disclaimer = A calculation for teaching and planning. It is no permit, no test report, no engineer's seal and no inspection. The locally adopted code and the building official rule; a licensed designer signs.
design-years =
    { $leak ->
        [yes] Design years with the assumed leak: { $list }.
       *[no] Design years: { $list }.
    }
row-title = { $mark } { $title }.
sheet = sheet
vented = vented
open = open
layer-and-substance = { $layer } ({ $substance })
values-from = { $layers }: { $source }.
picture-winter = The coldest month
picture-twelve-months = Twelve months
picture-years = Hour by hour
head-client = For the client
head-inspector = For the inspector
head-inputs = What was checked
head-layers = Layers, from inside to outside
column-layer = Layer
column-thickness = Thickness
column-r = R
column-vapor = Vapor, at mid humidity
head-checks = Checks, each with its limits ({ $legend })
head-rows = Code rows
head-cautions = Cautions and limits
sources = Where the layers' values come from: { $list }
numbered = { $number }. { $sentence }
sentence = { $said }.
caution = { $title }:
foot = { $date }, dryward { $version }
foot-of-file = { $file }, { $date }, dryward { $version }
foot-and-page = { $foot }, page { $page } of { $pages }

## Many roofs (many)

roof-in-place = { $roof } in { $place }
workers-out-of-range = Workers is { $workers }; it must be 1 to 256.
cluster-needs-dask = A cluster needs Dask: install the extra "cluster".
scheduler-silent = The scheduler { $address } does not answer ({ $error }).

## Tables at a prompt (tables)

table-layer-from-inside = layer, from inside
table-made-of = made of
table-thickness = thickness
table-thermal-resistance = thermal resistance
table-permeance-at-50 = permeance at 50 %
table-place = place
table-depth = depth
table-temperature = temperature
table-vapor-pressure = vapor pressure
table-saturation = saturation
table-humidity = humidity
table-water-gained = water gained
table-case = case
table-state = state
table-highest-humidity = highest humidity
table-at-a-depth-of = at a depth of
table-vapor-in = vapor in
table-vapor-out = vapor out
table-way = way
table-drying = drying
table-month = month
table-condensed = condensed
table-evaporated = evaporated
table-held-at-its-end = held at its end
table-coldest = coldest
table-warmest = warmest
table-most-moisture-mass = most moisture, mass %
table-at-the-end-mass = at the end, mass %
table-most-free-water = most free water
table-what-was-found = what was found
table-how-long = how long
table-limit-of = limit of
table-caution = caution
table-damage = damage
table-unit = unit
table-source = source
no-limit = no limit
rows-more =
    { $count ->
        [one] and { $count } row more
       *[other] and { $count } rows more
    }
inside-layer = inside { $layer }
way-of-inward = inward
way-of-outward = outward
way-of-both = both
# $given is what was asked about.
no-table-of = There is no table of { $given }.
trials-stopped = The trials were stopped.
