### Lesson your roof.

## The page.

month = Month
coldest-month = coldest month
warmest-month = warmest month
resistance = R between framing
resistance-note = whole { $whole }
outdoor = Outdoor air
outdoor-note = { $humidity }, { $place }
dew-point-depth = Dew-point line, depth
highest-relative-humidity = Highest humidity
humidity-note = { $inner } / { $outer }
gain = Water gained
# $said is what the month would do: a piece of a sentence.
month-for-ever = If this month never ends, { $said }. Air leaks, storage and sun come with the checks below.
layers = Layers
file-new = { $file }: not saved yet.
file-saved = { $file }: saved.
file-unsaved = There are changes that are not saved.
file = Your file
file-start = Start from
file-choose-roof = choose a roof
file-open = Open
file-choose = choose a file
file-upload = from this computer
file-name = Save as
file-save = Save
file-undo = Undo
file-redo = Redo
file-roof-name = Name of the roof
room-side = the room
search = Look in the library
search-hint = such as cellulose, poly, OSB, air
after = Highlighted layer
after-room = the room side
after-hint = Add puts a layer outside of it; Replace keeps its name and thickness.
search-nothing = The library has nothing called "{ $search }".
not-done = That could not be done; nothing was changed.
file-too-large = { $file }: it is larger than { $limit } bytes, too large for a roof.
weather-too-large = { $file }: it is larger than { $limit } bytes, too large for a weather file.

## The questions

direction-hint = Work out the vapor pressure on both sides. Then look at your answer again.
line-or-water-hint = Go along the layers from the room. At each face ask how cold it is, and how the vapor gets on.
leak-or-diffusion-hint = Count by weight what stays: of what diffuses through the ceiling, and of what comes through the hole.
