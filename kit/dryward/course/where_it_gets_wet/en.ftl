### Lesson 5: where it gets wet.

## The page

# $roof is its insulation and its drywall.
given = room { $room }, outdoor air at { $humidity }, { $roof }
outer-layer = Outer layer
open-sheet-us = open sheet (50 perm)
open-sheet-si = open sheet (sd 0.07 m)
fiberboard-us = fiberboard (20 perm)
fiberboard-si = fiberboard (sd 0.17 m)
osb-us = OSB (1.5 perm)
osb-si = OSB (sd 2.3 m)
closed-us = closed (0.1 perm)
closed-si = closed (sd 35 m)
dew-point-depth = Dew-point line, depth
wet-plane = Water gathers, depth
highest-relative-humidity = Highest humidity
gain = Water gained
drying-outward = Once wet, it dries outward
drying-outward-note = { $gives ->
        [yes] and { $rate } to the room
       *[no] but the room adds { $rate }
    }

# $line: whether there is a dew-point line in the roof; $depth: where. $settles and $gathers are said of the roof.
no-water = { $line ->
        [yes] The dew-point line is { $depth } from the room; no water gathers, and { $settles }.
       *[no] No part of the roof is as cold as the dew point of the room; no water gathers, and { $settles }.
    }
water = { $line ->
        [yes] The dew-point line is { $depth } from the room, but the { $frost ->
            [yes] frost
           *[no] water
        } is elsewhere: { $gathers }.
       *[no] No part of the roof is as cold as the dew point of the room, and still there is water: { $gathers }.
    }
step-pressure = Vapor pressure of the room.
step-dew-point = Dew point of the room: the temperature at which this is the most vapor there can be.
step-wood = But the { $layer } is wood. Its curve, at the { $humidity } of its face:

## The questions

# $failed: whether the check of that month finds water; else it finds none.
passes-why = { $failed ->
        [yes] The check asks what gathers in that month. It knows no summer: in this town all of it is gone by fall.
       *[no] The check asks for water at a face. It does not ask the wood, which would settle at { $moist }, over the caution of { $caution }. It knows no leak and no rain.
    }
passes-ask = { $failed ->
        [yes] A film of { $perms } is inside, OSB is outside. With { $room } and { $rh } in the room and a January mean of { $cold } outside the check finds { $water } at the OSB. What do you know of this roof?
       *[no] A film of { $perms } is inside, OSB is outside. With { $room } and { $rh } in the room and { $cold } outside the check finds no water. What do you know of this roof?
    }
passes-hint = What was this check asked, and for which days? Set them on the page, and ask what else you would have to know.
passes-right = { $failed ->
        [yes] Water gathers in such a month. Whether it is gone by fall is another question.
       *[no] No water gathers that day. What the wood does is another question.
    }
passes-one-check-decides = { $failed ->
        [yes] It will rot. It failed.
       *[no] It is fine. It passed.
    }
passes-one-check-decides-reply = { $failed ->
        [yes] A no sounds final. But this check asked for one month. Summer pulls the water out again, and by fall all of it is gone.
       *[no] A yes sounds final. But the wood would settle at { $moist }, over the caution of { $caution }, and the check does not ask the wood.
    }
passes-a-check-tells-nothing = Nothing. A check on paper says nothing of a roof.
passes-a-check-tells-nothing-reply = { $failed ->
        [yes] It says that { $water } gather in such a month: that is so. It does not say what is left by fall.
       *[no] It says that no water gathers on such a day: that is so. It does not say what the wood does.
    }

water-at-the-line-why = The vapor does not stop at the line. It passes on through the open layer, and even the coldest face stays at { $humid } RH, below 100 %.
water-at-the-line-ask = The room is { $room } and { $rh }, it is { $cold } and 80 % outside. The dew-point line lies { $line } from the room, and the outer membrane has { $perms }. Is there water at the line?
water-at-the-line-hint = Set the outer layer on the page to the open sheet. Read the highest humidity in the roof, and where it is.
water-at-the-line-right = No. The vapor pressure there is below saturation.
water-at-the-line-dew-point-is-a-place = Yes. That is where the air is at its dew point.
water-at-the-line-dew-point-is-a-place-reply = The room's air would be at 100 % there. But the vapor thins out on its way and passes through the open layer. Even the coldest face stays at { $humid } RH.
water-at-the-line-only-at-night = Only at night.
water-at-the-line-only-at-night-reply = This cold does not change with the hour. The vapor passes on through the open layer, and the coldest face stays at { $humid } RH all day and all night.
water-at-the-line-outward = Not yet. With damper room air the line goes outward to the membrane, and then it is wet there.
water-at-the-line-outward-reply = Damper room air has a higher dew point, so the line goes the other way, toward the room. And at { $humid } RH not even the membrane is at 100 %.
# What follows the fill, in the question below.
risk-face-osb = OSB of { $perms }
risk-face-other-layer = an outer layer of { $perms }
risk-face-dew-point-is-a-place = The plane in the fill that is as cold as the room's dew point, { $dew }.
risk-face-dew-point-is-a-place-reply = The fill lets the vapor on past that plane, to the outer layer. { $why }
risk-face-thickest-layer = The middle of the fill, since it is the thickest layer.
risk-face-thickest-layer-reply = Half of the fill is warm, and all of it lets the vapor on, to the outer layer. { $why }
risk-face-why-wet = At { $cold } outside that face takes up { $water }: it is cold, and less leaves than comes.
# $damp: nothing, or a sentence, with a space before it, that tells why it is damp all the same.
risk-face-why-damp = At { $cold } outside no water gathers there, but that face is at { $humid } RH.{ $damp }
risk-face-no-drops-no-problem = None. No drops form anywhere in this roof.
risk-face-no-drops-no-problem-reply = No drops is not yet dry. Look at the inner face of the outer layer. { $why }
risk-face-ask = Behind a { $perms } film lies { $fill } of fill, then { $layer }. The room is { $room } and { $rh }, it is { $cold } and 80 % outside. Which face is at risk?
risk-face-hint = Two things must meet at one face: it is cold, and the vapor is held up there. Go along the layers and look for both.
risk-face-right = The inner face of the outer layer: cold, and tighter than what is before it.

summer-line-why = The vapor does not stop there. It goes on inward through the fill, and the back of the film stays at { $back } RH, below 100 %.{ $damp }
summer-line-ask = It is July, { $hot } and { $humid } outside, and the room is cooled to { $cool } and { $indoor }. The outdoor air has its dew point at { $dew }, and the roof is that cold { $line } from the room, in the fill. The film is the variable one. Is there water at that place?
summer-line-hint = The line comes from outdoors now. Does open fill hold vapor back there? Go on to the first layer that does.
summer-line-right = No. The vapor goes on through the fill.
summer-line-dew-point-is-a-place = Yes. That is where the air is at its dew point.
summer-line-dew-point-is-a-place-reply = Outdoor air would be at 100 % there. But in the fill the vapor goes on inward and thins out. Even at the back of the film it is at { $back } RH.{ $damp }
summer-line-push-is-always-outward = No. In a roof only the room's air counts.
summer-line-push-is-always-outward-reply = Today the outdoor air has more vapor than the room, and it comes in. There is no water for another reason: in the fill it goes on, and at the back of the film it is at { $back } RH.{ $damp }
joists-why = Wood follows the RH beside it. At { $humid } it settles at about { $moist } MC, with no drop to see.
joists-ask = In August the air of a crawlspace is at { $cool } and { $humid }. A hand finds no drop on the joists. What do they do?
joists-hint = Two roofs of this lesson had no drop either. What did their wood go by, and how much of it is here?
joists-right = They take up water, to about { $moist } MC.
joists-no-drops-no-problem = Nothing. No drops, no problem.
joists-no-drops-no-problem-reply = Drops come at 100 %. Wood takes up vapor long before: at { $humid } RH it settles at about { $moist } MC.
joists-rh-is-moisture-content = They go to { $humid } MC, as the air is.
joists-rh-is-moisture-content-reply = At { $humid } RH wood settles at about { $moist } MC. { $humid } is the share of the most vapor there can be in the air.

## The beats

beat-first-say = Two roofs, alike but for the outer layer. Where does water show up first?
beat-first-ask = Take a letter in the picture, or choose from the list.
beat-first-first = Outer sheet, { $open }
beat-first-second = OSB deck, { $deck }
beat-first-answer = The line is in nearly the same place: { $line } and { $other } deep. Only the OSB gets wet: { $winter }.
beat-first-also = { $flux }
beat-line-say = The dew-point line can move. Watch if the water goes with it.
beat-line-ask = Slide the room humidity up until the line has moved { $far } or more.
beat-line-answer = The line came { $moved } toward the room. The frost did not: it is still at the OSB, { $amount }.
beat-line-also = { $flux }
beat-drops-say = Not a drop: both roofs pass the check for water. What would a meter read in the OSB?
beat-drops-ask = Bet on both before you see either.
beat-drops-first = Colder day
beat-drops-second = Milder day
beat-drops-colder-ask = What does the meter end at on the colder day?
beat-drops-colder-dry = Less than 16 %. No drops, no problem.
beat-drops-colder-over = 20 % or more. That is damp.
beat-drops-colder-dry-reply = No drops looks like dry, and the check agrees. But wood goes by the RH at its face, and here that is near 100 %. The meter ends at { $first }.
beat-drops-colder-over-reply = The face is near 100 % RH, so the wood takes up water with no drop to see. The meter ends at { $first }.
beat-drops-milder-ask = And on the milder day?
beat-drops-milder-dry = Less than 16 %, as in dry lumber.
beat-drops-milder-over = 20 % or more. That is damp.
beat-drops-milder-dry-reply = The face is warmer, so its RH is lower. The meter ends at { $second }.
beat-drops-milder-over-reply = It is the same wood, but a warmer face has a lower RH. The meter ends at { $second }.
beat-drops-answer = Both look dry, and both pass. The wood is { $points } points apart: { $first } and { $second }. That is { $water } on the whole roof.
meter-reads = Meter: { $moisture }
beat-check-say = Both roofs fail the January check. What is left by next fall?
beat-check-ask = Bet on both before you see either.
beat-check-first = OSB deck
beat-check-second = Closed sheet
beat-check-osb-ask = What is left under the OSB deck by next fall?
beat-check-osb-gone = All of it is gone.
beat-check-osb-stays = It failed, so it stays: more comes each year.
beat-check-osb-gone-reply = Summer pulls it all out again. The winter gave { $most }, and none of it is left.
beat-check-osb-stays-reply = It failed in January, so it looked lost. But a check of one month knows no summer. By fall all { $most } are gone.
beat-check-closed-ask = And under the closed sheet?
beat-check-closed-gone = All of it is gone.
beat-check-closed-stays = It stays: more comes each year.
beat-check-closed-gone-reply = A summer helps only if water can get out. This sheet lets so little pass that { $more } stay, each year.
beat-check-closed-stays-reply = The sheet lets hardly any out, and the summer is short: { $more } stay, each year.
beat-check-answer = One check, one result, two ends: none is left under the OSB, { $more } more each year under the sheet.
beat-check-also = { $flux } a year
left-after-a-year = { $dries ->
        [yes] Next fall: all gone
       *[no] Next fall: { $left } more
    }
