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
dries = It holds most at the end of { $month }, { $peak }, and dries back each year: the last of it is gone in { $gone }.
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
wettest-month-rh-drives-vapor = July, when the air is most humid.
left-over-no-film = no film
left-over-variable-film = the variable film
left-over-grows = It grows: each year starts wetter than the last.
left-over-dries = It gets wet and is dry again before the next fall.
left-over-no-wetting = No month adds water to it.
left-over-grows-reply = It wets, but the summer takes all of it back. Ask if it dries back.
left-over-dries-reply = The sum over the year decides, not the hope.
left-over-no-wetting-reply = Some months do add water, drops or no drops.
left-over-grows-why = At the end of the first year { $left } are still there, and the second adds to it.
left-over-dries-why = It holds at most { $peak }, and nothing is left at the year's end.
left-over-no-wetting-why = In each month more can leave through the outer layer than comes.
left-over-ask = A roof in the made-up town "{ $town }" has { $inside } inside and the outer layer "{ $outer }", { $perms }. Indoors it is { $room } and { $rh }. What do twelve months show?
left-over-hint = Look at the water at the end of the year. Is it where it began?
