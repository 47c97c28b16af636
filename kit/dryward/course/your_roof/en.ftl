### Lesson your roof.


## The page.

season = Season
month = Month
coldest-month = coldest month
warmest-month = warmest month
resistance = R between framing
outdoor = Outdoor air
dew-point-depth = Dew-point line, depth
highest-relative-humidity = Highest humidity
gain = Water gained
if-this-month-never = If this month never ended, { $said }. Air leaks, storage and sun come with the checks below.
layers = Layers
not-saved-yet = not saved yet
there-are-changes-that = There are changes that are not saved.
your-file = Your file
start-from = Start from
choose-a-roof = choose a roof
open = Open
choose-a-file = choose a file
from-this-computer = from this computer
save-as = Save as
save = Save
undo = Undo
redo = Redo
name-of-the-roof = Name of the roof
the-room = the room
look-in-the-library = Look in the library
such-as-cellulose-poly = such as cellulose, poly, OSB, air
highlighted-layer = Highlighted layer
the-room-side = the room side
add-puts-a-layer = Add puts a layer outside of it; Replace keeps its name and thickness.
the-library-has-nothing = The library has nothing called "{ $search }".
that-could-not-be = That could not be done; nothing was changed.
it-is-larger-than = { $amount }: it is larger than 1000000 bytes, too large for a roof.
it-is-larger-than-2 = { $amount }: it is larger than { $epw_limit } bytes, too large for a weather file.
