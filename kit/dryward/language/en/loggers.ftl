### What is said of a logger's file: what it is taken to be, what was odd in it, what it points to.
### $file is the name of a file.  The words for what a column holds stand in names.ftl.

## What a file was taken to be: each a sentence without its full stop

assumed = { $what }.
# $why is one of the reasons below.
assumed-why = { $what } ({ $why }).
between-cells = { $delimiter ->
    [semicolon] Between the cells stands a semicolon
    [comma] Between the cells stands a comma
    [tab] Between the cells stands a tab
   *[line] Between the cells stands an upright line
}
decimal-sign = The decimal sign is "{ $sign }"
lines-above = { $count ->
    [0] Above the first reading stand no lines
    [one] Above the first reading stand { $count } line
   *[other] Above the first reading stand { $count } lines
}
dates = { $order ->
    [ymd] Dates are year, month, day
    [mdy] Dates are month, day, year
   *[dmy] Dates are day, month, year
}
clock = { $clock ->
    [standard] The clock shows standard time
    [daylight] The clock shows daylight saving time
   *[changes] The clock changes with the season
}
# $holds is one of the three phrases below; $title stands above the column in the file.
column = Column { $number } is { $holds }
column-with-title = Column { $number } "{ $title }" is { $holds }
# A quantity, as "temperature".
holds = { $quantity }
holds-in = { $quantity } in { $unit }
# $what is one of the two above.
# Where a logger was.
place-indoors = indoors
place-cavity = in the roof
place-outdoors = outdoors
holds-at = { $what }, { $place }

## Why it was taken so

set-by-you = set by you
year-first = the year stands first
only-dates = only so is every date a date
even-steps = only so does time run on in even steps
day-or-month = not sure: day and month can be swapped
fixed-clock = the title says "{ $title }", a clock that is not put ahead
# $date is written year-month-day.
jumps-ahead = it jumps ahead an hour on { $date }
jumps-back = it jumps back an hour on { $date }
no-jump = no jump of an hour in it
no-title = from its numbers, as it has no title
no-unit = from its numbers, no unit is written
no-unit-unsure = from its numbers, no unit is written; not sure
unit-of-the-others = no unit is written; taken as in the file's other temperatures; check it
none-above-one = from its numbers, none above 1

## What was odd in it

last-line-left-out = { $file }: the last line is cut off or no reading, and left out.
# $lines are numbers of lines.
lines-left-out = { $more ->
    [yes] { $file }: lines without a date are left out: { $lines } and more.
   *[no] { $file }: lines without a date are left out: { $lines }.
}
# $hours has its plus or minus.
zone-of-times = { $file }: times carry their zone and are put on UTC{ $hours } h.
daylight-rows = { $file }: rows in daylight saving time, put on standard time: { $count }.
no-usable-number = { $file }: column { $number } has no usable number in { $lost } of { $rows } rows.
no-usable-number-titled = { $file }: column { $number } "{ $title }" has no usable number in { $lost } of { $rows } rows.
rows-sorted = { $file }: rows were not in the order of time and are sorted.
rows-doubled = { $file }: rows for a time already read are left out: { $count }.
gaps = { $file }: gaps: { $count }, the longest of { $hours } h.
above-saturation = { $file }: relative humidity above 100 % ({ $place }) is taken as 100 %.

## What was made of readings, as weather

readings-outdoors = readings outdoors
taken-as-saturated = Outdoors { $count } hours above saturation are taken as saturated.
sun-of = Sun, sky and wind are those of { $year }, not read here.
another-year = another year
filled-in = { $series ->
    [temperature-indoors] Temperature indoors is filled in for { $count } hours.
    [temperature-outdoors] Temperature outdoors is filled in for { $count } hours.
    [vapor-pressure-indoors] Vapor pressure indoors is filled in for { $count } hours.
   *[vapor-pressure-outdoors] Vapor pressure outdoors is filled in for { $count } hours.
}

## What the readings point to; a likeness goes from 0 to 1

no-rain-read = There are no readings of rain, so a leak from outside cannot be told.
no-wet-spell = Rain was read, but these weeks hold no wet spell to hold the wood against, so a leak from outside cannot be told.
after-rain = After { $share } % of { $spells } wet spells the wood was wetter a day later.
with-the-room = Hour by hour the roof's vapor pressure changes with the room's, sun and weather taken out: likeness { $likeness } of 1.
# $late is how many hours lie between the two.
with-the-room-late = { $when ->
    [after] Hour by hour the roof's vapor pressure changes with the room's, sun and weather taken out: likeness { $likeness } of 1, best { $late } h after it.
    [before] Hour by hour the roof's vapor pressure changes with the room's, sun and weather taken out: likeness { $likeness } of 1, best { $late } h before it: one of the clocks may be off.
   *[together] Hour by hour the roof's vapor pressure changes with the room's, sun and weather taken out: likeness { $likeness } of 1, best in the same hour.
}
from-the-wood = { $drier ->
    [yes] In { $share } % of the hours the roof has more vapor than the room and outdoors alike, and it changes with the deck's warmth: likeness { $likeness } of 1; the wood ends { $points } points drier than it began.
   *[no] In { $share } % of the hours the roof has more vapor than the room and outdoors alike, and it changes with the deck's warmth: likeness { $likeness } of 1; the wood ends { $points } points wetter than it began.
}
damp-room = The room has { $excess } more vapor than outdoors (a damp dwelling from { $damp }), and the roof is above outdoors in { $share } % of the hours.
shut = { $drier ->
    [yes] Hour by hour the roof's vapor pressure and outdoors: likeness { $likeness } of 1, sun and room taken out; it is above outdoors in { $share } % of the hours, and the wood ends { $points } points drier than it began.
   *[no] Hour by hour the roof's vapor pressure and outdoors: likeness { $likeness } of 1, sun and room taken out; it is above outdoors in { $share } % of the hours, and the wood ends { $points } points wetter than it began.
}
saturated = In { $share } % of the hours the roof was at 100 % RH, in frost over ice: it had all the vapor there can be at that temperature. In the cold that is little, and vapor from outdoors alone can do it. Such hours do not show what comes in, so the hourly changes leave them out.
as-outdoors = Hour by hour the roof's vapor pressure follows outdoors, sun and room taken out: likeness { $likeness } of 1.

## Errors

cannot-be-opened = { $file } cannot be opened: { $reason }.
unknown-reason = unknown reason
too-large = { $file } is too large; a file of readings is at most { $most } MB.
no-text = { $file } is not text; save the readings as CSV in the logger's own program.
empty = { $file } is empty.
too-many-lines = { $file } has { $count } lines; at most { $most } are read.
cell-too-long = { $file }, line { $line }: a cell is too long to be a reading.
formula = { $file }, line { $line }: a cell begins with "{ $sign }", like a formula of a spreadsheet; readings are dates and numbers only.
no-table = { $file } is no table: no comma, semicolon or tab cuts its lines into the same number of cells.
no-reading = { $file } has no line with a date and a number.
too-few = { $file } has { $count } readings; at least 2 are needed.
too-few-dated = { $file } has { $count } readings with a date that is understood so; at least 2 are needed.
no-dates = { $file } has no column of dates that can be understood.
order-not-understood = { $file }: the dates are not understood in any order of day, month and year.
one-time = { $file } has one time only; at least 2 are needed.
no-measurement = { $file } has no column of temperature, humidity, dew point or wood moisture.
header-lines = Number of header lines is { $given }; it must be 0 to 1000.
new-delimiter = A new delimiter makes new columns; guess the file again with it.
no-such-column = Column is { $number }; it must be 1 to { $count }.
no-hours-in-common = The records have no two hours in common; check their dates and time zones.
different-lengths = The two series have { $first } and { $second } values; they must have the same number.
no-hour-in-common = The two series have no hour in common.
hours-of-the-sun = The year of the sun has { $hours } hours; it must have { $must }.
too-few-hours = Hours known at all three places are { $count }; at least { $least } are needed.
too-many-gaps = { $series ->
    [temperature-indoors] Of the { $hours } hours { $lost } have no temperature indoors; at most { $most } % can be filled in.
    [temperature-outdoors] Of the { $hours } hours { $lost } have no temperature outdoors; at most { $most } % can be filled in.
    [vapor-pressure-indoors] Of the { $hours } hours { $lost } have no vapor pressure indoors; at most { $most } % can be filled in.
   *[vapor-pressure-outdoors] Of the { $hours } hours { $lost } have no vapor pressure outdoors; at most { $most } % can be filled in.
}
