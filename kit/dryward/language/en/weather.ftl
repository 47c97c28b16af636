### Weather and the air indoors: notes on what was read or made, and what is refused.

## Years and months.

constant-air = constant air
invented-year = An invented year for teaching: no place on earth had this weather.
# $what begins the sentence: a series such as "Air temperature".
twelve-values = { $what } needs 12 values, one for each month from January; { $count } are given.
list-of-hours = { $what } must be a list of hours, one number for each.
other-hours = { $what } has { $count } hours, but temperature has { $hours }.
above-saturation = Vapor pressure in hour { $hour } is { $pressure }; at { $temperature } there can be at most { $most }.
whole-years = There are { $count } hours of weather; monthly means need whole years of { $hours } hours.
saturated-months = In { $count } of 12 months the mean vapor pressure lies above saturation (over ice in frost); those months are taken as saturated.

## A cold winter's year; $by is an amount such as "2 K".

a-year = a year
colder-name = { $name }, { $by } colder
colder-months = Each month is { $by } colder than in the typical year, at the same relative humidity.
colder-hours = { $sky ->
    [yes] Each hour is { $by } colder than in the typical year, at the same relative humidity, with the same sun and wind; the sky sends as much less as the fourth power of the absolute temperature falls.
   *[no] Each hour is { $by } colder than in the typical year, at the same relative humidity, with the same sun and wind.
}

## A weather file that cannot be read. $file is its name, $word a word in it that stays as it is.

cannot-be-opened = { $file } cannot be opened: { $cause }.
unknown-reason = unknown reason
cut-off = { $file } is cut off: the packed file ends too early.
too-large = { $file } is too large; a weather file of one year is at most { $most } MB.
no-text = { $file } is not text, so it is no EPW weather file.
first-line = { $file } is no EPW weather file: its first line must begin with "{ $word }".
broken-header = { $file } is cut off or has a broken header: its line { $line } must begin with "{ $word }".
records-an-hour = { $file } has { $count } records an hour; only files with one are understood.
four-numbers = { $file }, line 1: latitude, longitude, time zone and altitude must be four numbers.
no-place-on-earth = { $file }, line 1: latitude { $latitude }, longitude { $longitude }, time zone { $zone } and altitude { $altitude } are no place on earth.
# $first is a line of the file.
too-few-hours = { $broken ->
    [yes] { $file } has { $count } usable hours of { $hours }; at most { $most } may be missing; { $first } is the first that is not understood.
   *[no] { $file } has { $count } usable hours of { $hours }; at most { $most } may be missing.
}
lacks = { $file } lacks { $what } in { $count } of { $hours } hours (first at { $first }); at most { $most }, and { $run } in a row, can be filled in.

## What was put right in a weather file. $places is a list of lines or hours.

line = line { $number }
no-row = { $hour } (no row)
and-more = { $some } and { $count } more
hour-in-jan = Jan { $day } hour { $hour }
hour-in-feb = Feb { $day } hour { $hour }
hour-in-mar = Mar { $day } hour { $hour }
hour-in-apr = Apr { $day } hour { $hour }
hour-in-may = May { $day } hour { $hour }
hour-in-jun = Jun { $day } hour { $hour }
hour-in-jul = Jul { $day } hour { $hour }
hour-in-aug = Aug { $day } hour { $hour }
hour-in-sep = Sep { $day } hour { $hour }
hour-in-oct = Oct { $day } hour { $hour }
hour-in-nov = Nov { $day } hour { $hour }
hour-in-dec = Dec { $day } hour { $hour }
filled-in = { $file }: { $what } filled in from the hours around for { $places }.
left-out = { $file }: { $what } is missing in { $count } of { $hours } hours, so the file gives none.
dew-from-humidity = { $file }: dew point from the relative humidity in { $count } hours without one.
dew-lowered = { $file }: dew point up to { $most } above the temperature in { $count } hours, lowered to it.
negative-sun = { $file }: small negative readings of the sun at night taken as none.
not-understood = { $count ->
    [one] { $file }: { $places } could not be understood and is left out.
   *[other] { $file }: { $places } could not be understood and are left out.
}
second-row = { $count ->
    [one] { $file }: { $places } is a second row for an hour and left out.
   *[other] { $file }: { $places } are a second row for an hour and left out.
}
leap-day = { $file }: February 29 is left out.

## The moment that the sun of a weather file belongs to.

sun-as-asked = { $file }: its sun is taken as that of { $moment }, as asked.
sun-of-a-moment = { $file }: its sun is not the mean of the hour but that of { $moment }.
sun-unclear = { $why ->
    [missing] { $file }: which moment its sun belongs to cannot be told without global, direct and diffuse sun; it is taken as the mean of the hour.
    [noise] { $file }: which moment its sun belongs to cannot be told, for global, direct and diffuse sun do not agree; it is taken as the mean of the hour.
   *[outside] { $file }: its sun fits no moment near its hour, so its clock or its place may be wrong; it is taken as the mean of the hour.
}
edge-of-hour = { $edge ->
    [start] the start of each hour
   *[end] the end of each hour
}
minutes-from-edge = { $minutes } minutes { $after ->
    [yes] after
   *[no] before
} { $edge ->
    [start] the start of each hour
   *[end] the end of each hour
}

## The air indoors.

room-of-other-hours = The room was read in { $count } hours, but the weather has { $hours }.
class-without-limit = Humidity class is 5, which has no upper limit; it must be 1 to 4, or give the room's own air.
no-humidity-class = Humidity class is { $given }; it must be 1, 2, 3 or 4.
room-series = The room has { $temperatures } temperatures, but { $pressures } vapor pressures.
room-above-saturation = Vapor pressure in the room in hour { $hour } is { $pressure }; at { $temperature } there can be at most { $most }.
no-air-dries = Vapor pressure outdoors is { $pressure }, not below the one wanted indoors; no amount of fresh air dries the room.
