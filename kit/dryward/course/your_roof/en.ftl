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
highest-relative-humidity = Highest humidity inside
humidity-note = { $inner } / { $outer }
gain = Water gained
# $said is what the month would do: a piece of a sentence.
month-for-ever = By vapor alone, if this month never ends, { $said }. House air, storage and sun are not counted here. They come with the checks below.
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

## The beats

by-vapor = by vapor: { $amount }
by-air = by house air: { $amount }
dries-out = outward: { $amount }
dries-in = inward: { $amount }
next-to-nothing = next to nothing

beat-first-say = This is your roof in its coldest month. Which leaves more water in it: vapor or house air?
beat-first-ask = Take a letter in the picture, or choose from the list.
# $more is which of the two leaves more.
beat-first-answer = { $more ->
    [air] A day leaves { $air } by house air, { $vapor } by vapor. The layers inside hold vapor back. Air goes round them, through gaps.
    [vapor] A day leaves { $vapor } by vapor, { $air } by house air. Little holds vapor back inside: a film there comes first, then the gaps.
   *[neither] A day leaves next to nothing, by vapor and by house air.
}
# $ach is the blower-door number; $known whether it is the house's own.
beat-first-also = { $known ->
    [yes] On { $area } of roof, with your blower door of { $ach } air changes.
   *[no] On { $area } of roof, with a blower door of { $ach } air changes: your file has none yet.
}
beat-summer-say = Now the warmest month. Say your roof is wet: which way does it dry?
beat-summer-ask = Take a sign in the picture, or choose from the list.
beat-summer-way-ask = Which way does more of the water leave?
beat-summer-way-out = Outward.
beat-summer-way-in = Inward, to the room.
beat-summer-way-none = Neither. Hardly any leaves.
beat-summer-way-out-reply = { $way ->
    [out] Outward { $out } a day, inward { $in }.
    [in] The sky is where you would send it. But inward it is { $in } a day, outward { $out }. What is outside holds it back.
   *[none] The sky is where you would send it. But what is outside holds it back: { $out }.
}
beat-summer-way-in-reply = { $way ->
    [in] Inward { $in } a day, outward { $out }.
    [out] In summer vapor often comes inward. But from wet wood more leaves outward: { $out } a day, inward { $in }.
   *[none] The film could let it in. But it lets through { $in }.
}
beat-summer-way-none-reply = { $way ->
    [none] Both ways it is next to nothing. What gets wet here stays wet.
    [out] It can dry: { $out } a day outward, { $in } inward.
   *[in] It can dry: { $in } a day inward, { $out } outward.
}
beat-summer-answer = When it is wet, the { $layer } gives off { $out } a day outward and { $in } inward, on { $area } of roof.
