### The rows of the codes and what is ruled by them; code numbers, sections and editions stand as they are.
### $permeance, $asked, $have and $value are numbers with their unit; $zone is a climate zone such as 4C.

## Said with every ruling

locally = as adopted locally; the building official decides
answer-met = met
answer-not-met = not met
answer-cannot-tell = cannot tell
head-met = Met
head-not-met = Not met
head-cannot-tell = Cannot tell
# The whole ruling. $place is code, edition and section.
ruled = { $head }: { $reason } ({ $place }; { $locally }).
how-read = Rule { $how }.
# $asked and $shown are editions. $why follows where that edition could not be read.
not-read = { $asked } was not read, so this is the row of { $shown }
not-read-and-why = { $instead }: { $why }
# Editions from one year to another.
years = { $first } to { $last }

## Rules of more than one row

rule-retarder = interior vapor retarder of a frame wall
rule-class-2-insulation = insulation outside a wall with a class II retarder
rule-vent-area = net free area of a vented roof

## What is not known

no-row = there is no row for the edition { $edition }
no-zone-row = the table has no row for zone { $zone }
no-row-names = no row names zone { $zone }
needs-letter = zone { $zone } needs its letter here
not-asked = not asked in zone { $zone }
not-allowed = not allowed in zone { $zone }
quantity-needed = the { $quantity } must be known
# One to three facts, of fact-... below.
needed =
    { $count ->
        [1] the { $first } must be known
        [2] the { $first } and the { $second } must both be known
       *[3] the { $first }, the { $second } and the { $third } must be known
    }
fact-vented-area = vented area
fact-net-free-area = net free area
fact-climate-zone = climate zone
fact-dry-cup-permeance = dry-cup permeance
fact-wall = wall (2x4 or 2x6)
fact-outside = R outside

## The openings of a vented roof; $least and $most are shares such as 1/300, the others areas

square-meters = { $number } m²
openings-enough = { $free } of net free area is at least { $most } of { $area }, { $asked }
openings-too-small = { $free } of net free area is below even { $least } of { $area }, { $asked }
openings-between = { $free } of net free area is between { $least } and { $most }, which asks for { $conditions }
# $high and $retarder are answers: met, not met, cannot tell.
conditions-either = one of: high vents, or a retarder inside; high vents: { $high }; retarder: { $retarder }
conditions-both = both: a share of high vents, and in zones 6 to 8 a class I or II retarder inside; high vents: { $high }; retarder: { $retarder }

## The retarder of a frame wall; $class is I, II or III

no-retarder =
    { $asked ->
        [yes] no retarder (over 10 perm): zone { $zone } asks for one
       *[no] no retarder (over 10 perm): zone { $zone } asks for none
    }
permitted = { $permeance }, class { $class }, is permitted inside in zone { $zone }
permitted-since-it-opens = { $permeance }, class { $class }, is permitted inside in zone { $zone } because it opens to more than 1 perm in the wet cup
prohibited = { $permeance }, class { $class }, is prohibited inside in zone { $zone }
too-open = { $permeance }, class { $class }, lets through more than the 1 perm that zone { $zone } asks for
both-sides = class I on both sides needs an approved design
texts-differ = { $why }; the texts of this edition differ on whether zone { $zone } asks for it: read the adopted one
vented-cladding =
    { $over ->
        [fiberboard] { $permeance }, class { $class }, is permitted in zone { $zone } with vented cladding over fiberboard
        [gypsum] { $permeance }, class { $class }, is permitted in zone { $zone } with vented cladding over gypsum
       *[panel] { $permeance }, class { $class }, is permitted in zone { $zone } with vented cladding over panel
    }
only-with = { $permeance }, class { $class }, is permitted in zone { $zone } only with insulation outside or vented cladding; not known: { $list }
unknown-wall = the wall (2x4 or 2x6)
unknown-outside = the R outside it
unknown-cladding = the cladding
# $wall is 2x4 or 2x6.
wall-asks = { $permeance }, class { $class }, in zone { $zone } on a { $wall } wall asks for { $asked } outside; there is { $have }
class-2-wall-asks = zone { $zone } on a { $wall } wall asks for { $asked } outside; there is { $have }

## Numbers in the unit of their row

in-perm = { $number } perm
in-perm-and-layer = { $number } perm ({ $layer })
in-r = R-{ $number }
in-inches = { $number } in.
in-fahrenheit = { $number } °F
in-an-hour = { $number } an hour
in-area-density = { $number } kg/m²
in-flow = { $number } m3/s per m2

## A rule of one row: $asks is one of asks-... below

row-says = { $quantity } { $shown }; the rule: { $asks }
# Before "is 7; it must be ...", where a number is out of range.
the-quantity = The { $quantity }

## What each rule takes, as a noun without its article

quantity-vent-area-retarder = dry-cup permeance on the warm-in-winter side
quantity-vent-opening = least dimension of an opening
quantity-vent-air-space = air space between insulation and sheathing
quantity-unvented-insulation = R of the air-impermeable insulation
quantity-unvented-insulation-tile = R of the air-impermeable insulation, tile roof
quantity-unvented-shingle-gap = vented gap under wood shingles or shakes
quantity-unvented-class-2 = dry-cup permeance of the air-impermeable insulation or its coating
quantity-unvented-inner-class = dry-cup permeance on the ceiling side
quantity-unvented-deck-temperature = monthly mean of the deck's underside, 68 F inside, mean of the three coldest months outside
quantity-diffusion-port-area = area of the diffusion port over the ceiling area
quantity-diffusion-port-permeance = permeance of the port
quantity-diffusion-port-place = distance of the port below the peak
quantity-diffusion-port-space = space between blocking and deck
quantity-diffusion-port-slope = rise in 12
quantity-diffusion-port-air = supply air per ceiling area
quantity-airtightness = air changes at 50 Pa
quantity-crawl-vent = vent area over floor area
quantity-crawl-vent-covered = vent area over floor area, class I ground cover
quantity-crawl-fan = fan flow per floor area
quantity-surface-humidity = monthly mean relative humidity at the surface
quantity-surface-factor = temperature factor of the inner surface
quantity-condensate-amount = condensate of the dew period
quantity-condensate-amount-nonabsorbing = condensate at faces that take up no water
quantity-evaporation-balance = evaporation over condensate
quantity-wood-gain = rise of the moisture content of wood
quantity-panel-gain = rise of the moisture content of wood-based panels
quantity-drying-reserve-roof = drying reserve a year
quantity-drying-reserve-wall = drying reserve a year
quantity-condensate-austria = condensate of the winter
quantity-panel-moisture = moisture content of wood-based panels
quantity-mold-index = mold index
quantity-mold-month = 30-day mean of surface humidity at 5 to 40 C
quantity-wood-decay = moisture content of wood
quantity-wood-fungi = moisture content of wood
quantity-dry-lumber = moisture content of lumber

## What each row asks, after "the rule:"; rows that ask the same share one message

asks-vent-area-retarder-1 = zones 6, 7 and 8: a class I or II retarder on the warm-in-winter side of the ceiling
asks-vent-area-retarder-2 = a retarder of at most 1 perm on the warm side
asks-vent-opening-1 = least dimension 1/16 to 1/4 in.; larger openings are screened
asks-vent-air-space-1 = at least 1 in. between the insulation and the roof sheathing at the vents
asks-unvented-insulation = at least { $value } of air-impermeable insulation
asks-unvented-insulation-attic = at least { $value } of air-impermeable insulation (the section names attics; rafter roofs came in 2012)
asks-unvented-insulation-tile-1 = no air-impermeable insulation asked under a tile roof
asks-unvented-shingle-gap-1 = at least 1/4 in. vented gap under wood shingles or shakes
asks-unvented-class-2-1 = zones 5 to 8: the air-impermeable insulation is, or has, a class II retarder
asks-unvented-inner-class-1 = no class I retarder on the ceiling side
asks-unvented-deck-temperature-1 = the underside of the deck above 45 F as a monthly mean, with 68 F inside
asks-diffusion-port-area-1 = area at least 1/600 of the ceiling
asks-diffusion-port-permeance-1 = at least 20 perm
asks-diffusion-port-place-1 = within 12 in. of the peak
asks-diffusion-port-space-1 = at least 2 in. between blocking and deck
asks-diffusion-port-slope-1 = slope of at least 3 in 12
asks-diffusion-port-air-1 = 50 cfm of supply air per 1000 ft2 of ceiling where all insulation below the deck is air-permeable
asks-airtightness-5 = at most 4.0 air changes an hour at 50 Pa
asks-airtightness-6 = at most 3.0 air changes an hour at 50 Pa
asks-airtightness-8 = at most 2.5 air changes an hour at 50 Pa
asks-airtightness-1 = at most 5.0 air changes an hour at 50 Pa
asks-airtightness-3 = at most 5 air changes an hour at 50 Pa
asks-airtightness-4 = at most 3 air changes an hour at 50 Pa
asks-airtightness-10 = below 7 air changes an hour at 50 Pa, where the test is chosen and not the visual inspection
asks-crawl-vent-1 = at least 1/150 of the floor area
asks-crawl-vent-covered-1 = at least 1/1500 with a class I ground cover
asks-crawl-fan-1 = 1.0 cfm of fan for each 50 ft2
asks-surface-humidity-1 = at most 80 percent at the inner surface as a monthly mean, against mold
asks-surface-factor-1 = temperature factor of at least 0.70
asks-condensate-amount-1 = at most 1.0 kg/m2 of condensate
asks-condensate-amount-nonabsorbing-1 = at most 0.5 kg/m2 where neither face takes up water
asks-evaporation-balance-1 = what can evaporate is at least what condenses
asks-wood-gain-1 = wood gains at most 5 points of moisture content
asks-panel-gain-1 = wood-based panels gain at most 3 points of moisture content
asks-drying-reserve-roof-1 = a roof keeps a drying reserve of 250 g/m2 a year
asks-drying-reserve-wall-1 = a wall keeps a drying reserve of 100 g/m2 a year
asks-condensate-austria-1 = less than 0.5 kg/m2, dry within the first summer
asks-panel-moisture-1 = at most 18 percent by mass in service class 2
asks-mold-index-1 = mold index below 3
asks-mold-month-1 = 30-day mean below 80 percent while the 30-day mean temperature is 5 to 40 C
asks-wood-decay-1 = below fiber saturation, about 30 percent, above which serious decay begins
asks-wood-fungi-1 = at most 20 percent, above which fungi can begin
asks-dry-lumber-1 = at most 19 percent, the limit of dry lumber

## What a climate zone may be: "it must be ..."

zones-there-are = 0 to 8, with or without A, B or C

## A row of the tables that cannot be used; $quoted and $memory are words of the tables.

row-reading = The table { $table }, row { $row }: reading must be { $quoted } or { $memory }.
# $listed are years, $editions is a constant of the code and its name stays.
row-edition = The table { $table }, row { $row }: { $listed } is no edition; EDITIONS are { $editions }.
row-number = The table of codes, row { $row }: { $given } is not a number.
