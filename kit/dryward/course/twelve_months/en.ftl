### Lesson twelve months.


## The page.

place = Place
invented-town = Invented town
peak = Most held
peak-note-else = no water gathers
peak-month = At the end of
peak-month-text-else = no month
peak-month-note = it wets in { $wets } of 12 months
dried = Dried out in a year
dried-note = of { $sum } gained
left = Left before the next fall
growth = Second year adds
no-month-adds-water = No month adds water to this roof in this town: more can leave than comes in each of them.
it-holds-most-at = It holds most at the end of { $peak_month }, { $peak }
and-dries-back-each = { $most }, and dries back each year: the last of it is gone in { $gone }.
are-left-when-the = { $most }; { $left } are left when the next winter comes, and the second year adds to it.
are-left-when-the-2 = { $most }; { $left } are left when the next winter comes, and the second year ends the same.
step-no-month-adds-water = No month adds water, so there is nothing to add up.
step-what-was-there-plus = { $month }: what was there, plus gained, minus dried.

## The checks: -ask the question, -right its answer, -why what is said of it; a wrong answer by its belief.

-january = January
-february = February
-march = March
-april = April
-may = May
-june = June
-july = July
-august = August
-september = September
-october = October
-november = November
-december = December
adding-up-why = Each month starts with what the last one left: { $gains } less { $loss }.
adding-up-ask = From November to February a deck gains { $listed }. In March it loses { $loss }. How much does it hold at the end of March?
adding-up-months-stand-alone-reply = One month of drying takes only its own share off the pile.
adding-up-coldest-is-wettest-reply = The sum of the cold months is there, but March takes some of it off.
wettest-month-why = It adds up from { $first } on and is at its most, { $peak }, at the end of { $peak_month }.
wettest-month-ask = A roof with OSB outside and { $inner } inside stands in the made-up town "{ $name }", with { $rh } indoors. { $coldest } is the coldest month. At the end of which month does the OSB hold the most water?
wettest-month-months-stand-alone-reply = That is when it starts. Later months add to it.
wettest-month-rh-drives-vapor = July, when the air is most humid.
left-over-no-wetting = no wetting
left-over-no-film = no film
left-over-the-variable-film = the variable film
left-over-it-grows-each-year = It grows: each year starts wetter than the last.
left-over-it-gets-wet-and = It gets wet and is dry again before the next fall.
left-over-no-month-adds-water = No month adds water to it.
left-over-it-wets-but-the = It wets, but the summer takes all of it back. Ask if it dries back.
left-over-the-sum-over-the = The sum over the year decides, not the hope.
left-over-some-months-do-add = Some months do add water, drops or no drops.
left-over-at-the-end-of = At the end of the first year { $left } are still there, and the second adds to it.
left-over-it-holds-at-most = It holds at most { $peak }, and nothing is left at the year's end.
left-over-in-each-month-more = In each month more can leave through the outer layer than comes.
left-over-ask = A roof in the made-up town "{ $name }" has { $inside } inside and the outer layer "{ $outer }", { $outer2 }. Indoors it is { $degrees } and { $rh }. What do twelve months show?
