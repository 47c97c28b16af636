### Lesson twelve months.

## The page.

# $roof is its insulation and its drywall.
given = room { $room } all year, { $roof }, air in the months of a made-up town
town = Invented town
peak = Most held
no-water = no water gathers
peak-month = At the end of
no-month = no month
peak-month-note = it wets in { $wets } of 12 months
dried = Dried out in a year
dried-note = of { $sum } gained
left = Left before the next fall
growth = Second year adds
no-wetting = No month adds water to this roof in this town: more can leave than comes in each of them.
dries = { $wet ->
    [yes] It holds most at the end of { $month }, { $peak }. That is too much, even if the last of it is gone in { $gone }.
   *[no] It holds most at the end of { $month }, { $peak }, and dries back each year: the last of it is gone in { $gone }.
}
grows = It holds most at the end of { $month }, { $peak }; { $left } are left when the next winter comes, and the second year adds to it.
carries = It holds most at the end of { $month }, { $peak }; { $left } are left when the next winter comes, and the second year ends the same.
step-nothing = No month adds water, so there is nothing to add up.
step-month = { $month }: what was there, plus gained, minus dried.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

adding-up-why = Each month starts with what the last one left: { $gains } less { $loss }.
adding-up-ask = From November to February a deck gains { $each }. In March it loses { $loss }. How much does it hold at the end of March?
adding-up-hint = Go month by month. What lies there when the next one begins?
# One more gain of the list in the question.
adding-up-next = { $gains }, { $gain }
adding-up-march-alone-reply = One month of drying takes only its own share off the pile.
adding-up-coldest-is-wettest-reply = The sum of the cold months is there, but March takes some of it off.
wettest-month-why = It adds up from { $first } on and is at its most, { $peak }, at the end of { $peak_month }.
wettest-month-ask = A roof with OSB outside and { $inner } inside stands in the made-up town "{ $town }", with { $rh } indoors. { $coldest } is the coldest month. At the end of which month does the OSB hold the most water?
wettest-month-hint = In which months does the OSB still gain, and when does it begin to lose? Look at the page.
wettest-month-months-stand-alone-reply = That is when it starts. Later months add to it.
wettest-month-counts-only-what-comes = July, when there is the most vapor in the air outdoors.
left-over-no-film = no film
left-over-variable-film = the variable film
left-over-grows = It grows: each year starts wetter than the last.
left-over-dries = Water gathers, and all of it leaves before the next fall.
left-over-no-wetting = No month adds water to it.
left-over-grows-reply = It wets, but the summer takes all of it back. Ask if it dries back.
left-over-dries-reply = The sum over the year decides, not the hope.
left-over-no-wetting-reply = Some months do add water, drops or no drops.
left-over-grows-why = At the end of the first year { $left } are still there, and the second adds to it.
left-over-dries-why = It holds at most { $peak }, and nothing is left at the year's end.
left-over-no-wetting-why = In each month more can leave through the outer layer than comes.
left-over-ask = A roof in the made-up town "{ $town }" has { $inside } inside and the outer layer "{ $outer }", { $perms }. Indoors it is { $room } and { $rh }. What do twelve months show?
left-over-hint = Look at the water at the end of the year. Is it where it began?

august-why = In summer the vapor pressure is higher outside. It comes in through the { $perms }, and stops at the { $inner }.
august-ask = In the made-up hot, humid town a roof has plastic of { $inner } inside and the outer layer "{ $outer }", { $perms }. The room is at { $room } and { $rh }. A January check finds no water. Where is the most water at the end of { $month }?
august-hint = On which side is the vapor pressure higher in summer? Go with the vapor, and look for the layer that stops it.
august-right = On the back of the plastic, toward the fill.
august-barrier-always-inside = Nowhere. The barrier is on the inside, where it belongs.
august-barrier-always-inside-reply = In a long winter that is a good place for it. But here the vapor comes from outside all summer, and { $peak } gather on its back.
august-one-check-decides = Nowhere. The roof passed its check.
august-one-check-decides-reply = The check knows January alone. By the end of { $month } { $peak } have gathered, on the back of the plastic.
august-dew-point-is-a-place = At the dew-point line, in the middle of the fill.
august-dew-point-is-a-place-reply = The fill lets the vapor on. It goes inward here, and { $peak } gather at the first cool face that stops it: the back of the plastic.
wet-studs-why = Two sides of { $tight } let { $both } out, and { $water } have to go. Thick wood is slower still.
wet-studs-ask = A wall was closed up with 2x6 studs at { $start }, between two sheets of { $tight } each. It is { $room } inside the wall and on both sides, with 50 % RH in the air. The studs have { $water } too much for { $end }. How long do they need, if such days do not end?
wet-studs-hint = How much can leave on one day, through both sheets? And how much has to go?
wet-studs-right = About { $months } months. One side of { $wide } instead would make it { $days ->
    [one] a day
   *[other] { $days } days
} at best.
wet-studs-wet-lumber-dries-itself = A week or two. Lumber dries by itself once it is warm.
wet-studs-wet-lumber-dries-itself-reply = It would in a warm shop, with open air all round. Between two sheets only { $both } leave, and { $water } have to go: { $months } months.
wet-studs-two-barriers-twice-as-good = They need not dry. Two sheets keep water out twice as well.
wet-studs-two-barriers-twice-as-good-reply = This water is in already, and two sheets keep it in. It takes { $months } months at { $both }.
wet-studs-no-drops-no-problem = It does not matter, as long as no drops show.
wet-studs-no-drops-no-problem-reply = Studs at { $start } show no drops, and mold can grow on them. They stay so for most of { $months } months.

## The beats

# Over the highest bar.
most-in = { $water }, end of { $month }
rafters-at = { $moisture } in { $month }
beat-first-say = A roof gains water all winter. In which month does it hold the most?
beat-first-ask = Take a month in the picture, or choose from the list.
beat-first-answer = Most at the end of { $month }: { $most } on { $area }. At the end of { $coldest } it was { $then }. All of it is gone in { $gone }.
beat-first-also = { $flux }; at the end of { $coldest } { $flux_then }
beat-lumber-say = Wet rafters, closed up on September 1. Do they dry by themselves?
beat-lumber-ask = Bet on both before you see either.
beat-lumber-first = Plastic inside, closed sheet outside
beat-lumber-second = Plastic inside, open sheet outside
beat-lumber-closed-ask = The rafters are at { $start }. It is warm inside. Where are they a year later under the closed sheet?
beat-lumber-closed-dried = Under { $dried }. Wood dries by itself once it is warm.
beat-lumber-closed-wet = Still over { $caution }.
beat-lumber-closed-dried-reply = A stack of lumber does dry in a warm shop, with open air all round. Here two sheets keep the vapor in. A year takes only { $left }, and the rafters are at { $closed }.
beat-lumber-closed-wet-reply = The two sheets let hardly any vapor out: { $left } in a year. The rafters are at { $closed }.
beat-lumber-open-ask = And under the open sheet?
beat-lumber-open-dried = Under { $dried }. Wood dries by itself once it is warm.
beat-lumber-open-wet = Still over { $caution }.
beat-lumber-open-dried-reply = But not by itself. The open side lets { $gone } out, and at the end of { $month } they are at { $open } already, in { $last } at { $open_last }.
beat-lumber-open-wet-reply = It is just as wet, and has the same plastic. But one side is open. It lets { $gone } out. At the end of { $month } they are at { $open } already, in { $last } at { $open_last }.
beat-lumber-answer = One open side: { $gone } leave { $area } of roof by the end of { $month }. Two tight sides: { $left } in a year.
beat-lumber-also = { $flux } in a year. Under the open sheet the damp air of winter brings the wood back to { $open_most } in { $open_month }. Thick wood gives its water up more slowly still.
beat-check-say = One roof fails the January check. The other passes it. Which year is worse?
beat-check-ask = Bet on both before you see either.
beat-check-first = Cold town, OSB: fails in January
beat-check-second = Hot, humid town, plastic inside: passes
beat-check-fails-ask = The roof that fails: how much water lies in it at its worst, on { $area }? Hold it against { $little }: that is { $limit }, what a face may hold by this page's limit.
beat-check-fails-little = Less than { $little }, and it leaves again.
beat-check-fails-much = More than that. It failed, so it will rot.
beat-check-fails-little-reply = January adds water, and spring takes it out: { $fails } at the most, and all of it is gone in { $gone }.
beat-check-fails-much-reply = A failed check sounds final. But it knows one month. The pile ends at { $fails }, and all of it is gone in { $gone }.
beat-check-passes-ask = And the roof that passes?
beat-check-passes-little = Less than { $little }. It passed.
beat-check-passes-much = More than that.
beat-check-passes-little-reply = January adds nothing here, so it passed. But in summer the vapor comes from outside and stops at the back of the plastic: { $passes } at the end of { $passes_month }.
beat-check-passes-much-reply = January is not its month. In summer the vapor comes from outside and stops at the back of the plastic: { $passes } at the end of { $passes_month }.
beat-check-answer = On { $area }: it failed and held { $fails } at the most. The other passed and held { $passes }, in { $passes_month }, on the back of its plastic.
beat-check-also = { $flux_fails } and { $flux_passes }
