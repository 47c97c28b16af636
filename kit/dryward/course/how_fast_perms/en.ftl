### Lesson 6: how fast, perms.

## The page

given = painted drywall { $drywall }; vapor alone, no moving air
painted-drywall = painted drywall
film = film
outer-layer = outer layer
film-slider = Film
outer-layer-choice = Outer layer
one-perm-us = sheet (1 perm)
one-perm-si = sheet (sd 3.5 m)
open-sheet-us = open sheet (50 perm)
open-sheet-si = open sheet (sd 0.07 m)
plywood-dry-us = plywood 7/16 in., dry cup (0.69 perm)
plywood-dry-si = plywood 11 mm, dry cup (sd 5.1 m)
plywood-wet-us = plywood 7/16 in., wet cup (6.9 perm)
plywood-wet-si = plywood 11 mm, wet cup (sd 0.51 m)
osb-dry-us = OSB 7/16 in., dry cup (0.91 perm)
osb-dry-si = OSB 11 mm, dry cup (sd 3.8 m)
osb-wet-us = OSB 7/16 in., wet cup (2.3 perm)
osb-wet-si = OSB 11 mm, wet cup (sd 1.5 m)
felt-dry-us = No. 15 felt, dry cup (1 perm)
felt-dry-si = No. 15 felt, dry cup (sd 3.5 m)
felt-wet-us = No. 15 felt, wet cup (5.6 perm)
felt-wet-si = No. 15 felt, wet cup (sd 0.62 m)
synthetic-us = synthetic underlayment (0.06 perm)
synthetic-si = synthetic underlayment (sd 58 m)
self-adhered-us = self-adhered sheet (0.05 perm)
self-adhered-si = self-adhered sheet (sd 70 m)
gap-slider = Share of the film missing
together = All three in a row
flow = Vapor that passes
rules = What rules
and-rules = { $first } and { $next }
rules-note = { $share } of the resistance{ $alone ->
        [yes] {""}
       *[no] {" "}each
    }
class = The film's class
# The class of a vapor retarder: I, II or III.
class-said = { $kind ->
        [none] no class
       *[other] Class { $kind }
    }
class-note = by dry-cup perms; see local code
cut = The film holds back
cut-note = of what would pass without it
# $bare: what would pass with no film.
with-a-gap = With { $gap } % of it missing the film holds back { $cut } of the vapor: { $flow } passes, and { $bare } would with no film. For air the gap would be a hole.
in-a-row = In a row the three act like one sheet of { $whole }, tighter than the tightest alone: { $flow } passes.
step-gap = Drywall and film: where the film is, both in a row; where it is missing, the drywall alone.
step-row = All in a row: one over the sum of one over each.
step-flow = Flow: permeance times push.

## The questions

class-of-ask = A sheet has { $perms } by dry cup. Which vapor retarder class is it?
class-of-hint = Look up the limits of the three classes, and hold the number against each.
class-of-class = { $kind ->
        [class-I] Class I
        [class-II] Class II
       *[class-III] Class III
    }
# $limits is a whole sentence.
class-of-other-reply = { $other } has other limits. { $limits }
which-rules-ask = Drywall of { $drywall }, paint of { $paint } and a sheet of { $sheet } lie in a row. { $asked }
which-rules-hint = Must the vapor pass one of these layers, or all of them?
gap-why = By area, { $share } open and the rest shut make { $left }, not { $beside }.
gap-ask = A film of { $film } lies behind painted drywall, with nothing outside it, and { $share } of the film is missing. How much of the diffusion does it still stop?
gap-hint = How much of the area is still covered, and how much passes through each of the two parts?
gap-small-gap-is-nothing-reply = What passes where the film is missing adds to the rest. With the gap it stops { $cut }.
# $label: of the dry cup; $wet: of the wet cup; $middle: half way between.
wet-label-ask = { $thing -> 
        [kraft] The kraft facing of a batt is
        [plywood] A plywood panel is
        [osb] An OSB panel is
       *[felt] A roll of felt is
    } labeled { $label }, by dry cup. In a damp July the air on both of its sides is at { $humid } RH. How open is it there?
wet-label-hint = Which cup was the label measured in, and which of the two cups is this July more like?
wet-label-why = At { $humid } RH its wet-cup number holds, { $wet }. That is { $times } times as open as labeled.
wet-label-right = { $wet }, its wet-cup number.
wet-label-label-perm-is-the-perm = { $label }. It says so on the label.
wet-label-middle-of-the-curve = { $middle }, half way between its two cups.
wet-label-middle-of-the-curve-reply = Half way is where neither cup was. { $humid } RH is as damp as the wet cup: { $wet }.
roll-ask = A plywood deck is covered with No. 15 felt. The new bid has { $roll ->
        [synthetic] a synthetic underlayment
       *[adhered] a self-adhered sheet
    } in place of it. A film of { $film } is inside, and it is { $cold } out. What changes for the deck?
roll-hint = Look up both rolls at the outer layer of the page. How open is each?
roll-why = Damp felt is at { $felt }, this sheet at { $perms }. Under the felt nothing gathers, under the sheet { $gain }.
roll-right = Under it { $gain } gather, where none did.
roll-any-underlayment-breathes = Nothing. Underlayment is underlayment, and both breathe.
roll-two-barriers-twice-as-good = It gets drier. A second tight sheet keeps more water out.
roll-two-barriers-twice-as-good-reply = It keeps rain out as felt does. But vapor comes from below, and now less can leave. Under the felt nothing gathers, under the sheet { $gain }.

## The picture

axis-pressure = vapor pressure above the outlet, { $unit }
axis-flow = flow
alt-sheet = { $name }, { $permeance }
alt-sheets = { $first }; { $next }
alt-pipe = A pipe with { $count } valves in a row: { $sheets }.
alt-flow = Driven by { $difference }, the flow is { $flow }.
alt-tightest = The tightest, { $tightest }, takes { $share } of the pressure.

## The beats

row-drywall = drywall { $permeance }
row-film = film { $permeance }
row-sheet = outer sheet { $permeance }
# $push: by how much the vapor pressure of the room is higher.
row-push = push: { $push }
row-one = one for all three
row-takes = takes { $share }
row-pressure = pressure left in the pipe
a-day = { $amount } a day
stamped = stamp: { $permeance }
damp-perms = now: { $permeance }
roll-perms = roll: { $permeance }
no-frost = No frost; face at { $humidity } RH
beat-first-say = Painted drywall, a film and an outer sheet lie in a row. What single sheet lets as much through?
beat-first-ask = { $system ->
        [us] Point at its perms on the scale, or choose from the list.
       *[si] Point at its sd on the scale, or choose from the list.
    }
beat-first-answer = All three come to { $whole }, tighter than the tightest alone. So { $amount } get through; the film alone would let { $alone } by.
beat-first-also = { $flux }
beat-gap-say = A tenth of the film is missing. How much of the vapor does it still hold back?
beat-gap-ask = Take a letter in the picture, or choose from the list.
beat-gap-first = Whole film
beat-gap-second = A tenth missing
beat-gap-film-ask = How much of the vapor does the film with the gap still hold back?
beat-gap-film-none = Next to nothing. With one gap a vapor barrier is useless.
beat-gap-film-half = About half of it.
beat-gap-film-most = About three quarters of it.
beat-gap-film-none-reply = Crews are told to make it perfect, and for air that is so: there the gap is a hole. For vapor the area counts. Whole, { $whole } a day pass; with the gap { $gap }; with no film { $no-film }.
beat-gap-film-half-reply = That is less than it does. With no film { $no-film } a day would pass, and with the gap it is { $gap }.
beat-gap-film-most-reply = { $held } of it: { $gap } a day pass, not the { $no-film } with no film.
beat-gap-answer = Whole film { $whole } a day, with the gap { $gap }, no film { $no-film }. For air such a gap is a hole: lesson 10 weighs that.
beat-gap-also = { $flux }
beat-cup-say = Two decks in January, by their stamps both of class II. Does frost gather?
beat-cup-ask = Bet on both before you see either.
beat-cup-first = Plywood deck
beat-cup-second = OSB deck
beat-cup-plywood-ask = The plywood is stamped { $plywood-stamp }, dry cup. What gathers at it?
beat-cup-plywood-frost = Frost. It lets hardly any out: the stamp says { $plywood-stamp }.
beat-cup-plywood-none = No frost. Damp, it lets more out than the stamp says.
beat-cup-plywood-frost-reply = The stamp has one number, from a dry cup. But this panel is damp, and so it is at { $plywood-damp }. By the stamp { $plywood-by-stamp } of frost a day would gather; it is none. Still, its face is at { $plywood-humid } RH.
beat-cup-plywood-none-reply = Damp, it is at { $plywood-damp }, ten times as open as stamped. No frost, but its face is at { $plywood-humid } RH: damp wood.
beat-cup-osb-ask = The OSB is stamped { $osb-stamp }, dry cup. What gathers at it?
beat-cup-osb-frost = Frost. It lets too little out.
beat-cup-osb-none = No frost. Damp, it lets enough out.
beat-cup-osb-frost-reply = Damp opens OSB too, but only from { $osb-stamp } to { $osb-damp }: { $osb-frost } of frost a day. The stamp is off here too: by it { $osb-by-stamp } would gather.
beat-cup-osb-none-reply = Damp opens it too, but only from { $osb-stamp } to { $osb-damp }. That is not enough: { $osb-frost } of frost a day.
beat-cup-answer = By their stamps both get frost, { $plywood-by-stamp } and { $osb-by-stamp } a day. Damp, the plywood gets none and the OSB { $osb-frost }.
beat-cup-also = { $osb-flux }
beat-rolls-say = Two rolls on two plywood decks, alike from the yard. Does frost gather under them?
beat-rolls-ask = Bet on both before you see either. The film inside has { $film }.
beat-rolls-first = No. 15 felt
beat-rolls-second = Synthetic
beat-rolls-felt-ask = What gathers under the felt?
beat-rolls-felt-frost = Frost. Felt is asphalt, and asphalt is tight.
beat-rolls-felt-none = No frost.
beat-rolls-felt-frost-reply = Asphalt sheds rain, so felt looks tight. But it is paper inside, and damp it is at { $felt }. The deck is at { $felt-humid } RH, and no frost gathers.
beat-rolls-felt-none-reply = Dry, felt is at { $felt-dry }, and damp at { $felt }. The deck is at { $felt-humid } RH, and no frost gathers.
beat-rolls-synthetic-ask = And under the synthetic?
beat-rolls-synthetic-frost = Frost. It is much tighter than felt.
beat-rolls-synthetic-none = No frost. It breathes like felt.
beat-rolls-synthetic-frost-reply = It is at { $synthetic }, damp or dry, and damp felt at { $felt }. So { $frost } of frost gather a day.
beat-rolls-synthetic-none-reply = It rolls out like felt and sheds rain like felt. But it is { $times } times as tight: { $synthetic }, and damp felt { $felt }. So { $frost } of frost gather a day.
beat-rolls-answer = Felt { $felt }: no frost. Synthetic { $synthetic }: { $frost } a day. Self-adhered { $adhered }: { $adhered-frost }. Read the data sheet, not the roll.
beat-rolls-also = { $flux }
