### Lesson 6: how fast, perms.

## The page

given = painted drywall { $drywall }; vapor alone, no moving air
painted-drywall = painted drywall
film = film
outer-sheet = outer sheet
film-slider = Film
outer-sheet-slider = Outer sheet
gap-slider = Share of the film missing
together = All three in a row
flow = Vapor that passes
rules = What rules
rules-note = { $share } of the resistance
class = The film's class
# The class of a vapor retarder: I, II or III.
class-said = { $kind ->
        [none] no class
       *[other] Class { $kind }
    }
class-note = by dry-cup perms; see local code
cut = Film and gaps cut
cut-note = off what drywall lets through
with-a-gap = With { $gap } % of it missing the film cuts { $cut } of the vapor: { $flow } passes. For air the gap would be a hole.
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
class-of-vapor-barrier-is-air-barrier = No class. Only a perfect sheet is a retarder.
# $limits is a whole sentence.
class-of-other-reply = { $other } has other limits. { $limits }
which-rules-ask = Drywall of { $drywall }, paint of { $paint } and a sheet of { $sheet } lie in a row. { $asked }
which-rules-hint = Must the vapor pass one of these layers, or all of them?
which-rules-label-perm-is-the-perm-reply = Vapor must pass all three. The tightest rules: { $found }.
gap-why = By area, { $share } open and the rest shut make { $left }, not { $beside }.
gap-ask = A film of { $film } lies behind painted drywall, and { $share } of the film is missing. How much of the diffusion does it still stop?
gap-hint = How much of the area is still covered, and how much passes through each of the two parts?
gap-label-perm-is-the-perm-reply = The label holds for the whole sheet. With the gap it stops { $cut }.
gap-share-reply = { $share } is the part that is missing, not what the rest stops: that is { $cut }.

## The picture

axis-pressure = vapor pressure above the outlet, { $unit }
axis-flow = flow
alt-sheet = { $name }, { $permeance }
alt-sheets = { $first }; { $next }
alt-pipe = A pipe with { $count } valves in a row: { $sheets }.
alt-flow = Driven by { $difference }, the flow is { $flow }.
alt-tightest = The tightest, { $tightest }, takes { $share } of the pressure.
