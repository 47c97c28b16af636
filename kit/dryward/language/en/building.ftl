### Building: what is said of materials, layers, roofs and their files.

## Materials and membranes.

# Begins a sentence: $what is a property of a material, $first what its curve is given over.
along = { $what }, { $first }
one-number-or-points = { $what } must be one number or at least two points ({ $first }, value).
# A material at the prompt, with the vapor it passes at half the humidity of saturated air.
material-line = { $name }, { $density }, { $conducts }, { $passes } at 50 %
# A membrane at the prompt, with its permeance where the air is dry and where it is damp.
opens = { $dry } at 25 %, { $damp } at 85 %
# An air space at the prompt, where it is one.
vented = vented
curve-points = A membrane curve needs as many permeances as humidities, at least two; it has { $humidities } humidities and { $permeances } permeances.
curve-falls = A membrane curve must not fall: at { $humidity } its permeance drops from { $left } to { $right }.
sensitive-sheet = The sensitive sheet of a laminate must be a variable membrane.
wet-cup-below = The wet-cup value { $wet } is below the dry-cup value { $dry }; it must be at least as large.

## Where a value comes from.

own-value = own value
# $cautions are one or several of names.ftl, such as "from memory".
partly = partly { $cautions }

## Layers and assemblies.

made-of-layers = An assembly is made of layers, not { $given }.
number-of-layers = The assembly { $name } has { $count } layers; it must have 1 to 60.
begins-with-vent-space = The assembly { $name } begins with a vent space; there must be a layer inside it.
# An assembly at the prompt, in one line.
assembly-line = { $name }, { $thick }, { $resistance }, slope { $slope }: { $layers }
assembly-thick = { $us } ({ $si })
layer-made-of = A layer is made of a material, a membrane or an air space, not { $given }.
no-way-for-air = The membrane { $name } has no thickness for air to seep through.
needs-thickness = The layer { $name } needs a thickness, above 0 to { $most }.
framing-needs-thickness = The layer { $name } needs a thickness for the framing that runs through it.
# $kind has its article: "a membrane".
layer-of-a-kind = The layer { $name } must be { $kind }, not { $given }.

## Layers in an odd order. $names are names of layers.

misplaced = { $name } lies { $side ->
    [room] on the room side
   *[weather] on the weather side
} of the insulation; { $kind ->
    [rain-sheet] an underlayment or weather barrier belongs on the weather side
    [vent-space] insulation beyond a vent space lies in outdoor air
    [interior-finish] a finish of the room belongs on the room side
   *[roof-covering-or-cladding] a roof covering or cladding belongs on the weather side
}. Layers are listed from inside to outside.
turned-round = The layers look turned round: { $room }, and { $weather }. Layers are listed from inside to outside.
lies-room = { $count ->
    [one] { $names } lies on the room side of the insulation
   *[other] { $names } lie on the room side of the insulation
}
lies-weather = { $count ->
    [one] { $names } lies on the weather side of the insulation
   *[other] { $names } lie on the weather side of the insulation
}

## Files of roofs and jobs. $place is the file or a place in it, $key and $word are words of the file and stay as they are.

the-file = the file
top-of-file = the top of the file
layer = layer { $number }
layer-named = layer { $number } ({ $name })
# A place in a place.
within = { $outer }, { $inner }
# A sentence about what is wrong, after the file or the place in it.
in-a-file = { $file }: { $sentence }
without-a-name = without a name
nested-too-deeply = { $file }: it is nested too deeply.
# $said is what the reader of such files says, in English.
no-toml = { $file }: it is not written as TOML: { $said }.
too-many-digits = { $file }: it holds a number with too many digits.
no-table = { $place }: it must be a table of words and values.
no-such-word = { $place }: the word "{ $word }" is not known.
word-nearly = { $place }: the word "{ $word }" is not known; did you mean { $near }?
missing = { $place }: { $key } is missing.
table-missing = the table { $table } is missing.
wrong-kind = { $place }: a value is not of the right kind.
one-of = { $what } must be one of { $known }, not { $given }.
twelve-means = { $what } needs 12 values for typed means and none otherwise; { $count } are given.
few-values = { $place } must have at most { $most } values.
number-or-text = { $place } must be a number or a short text.
number-of-ordinary-size = { $place } must be a number of ordinary size.
layers-written = the layers must be written as { $written }.
its-layers-written = its layers must be written as { $written }.
too-many-layers = it has { $count } layers; it must have 1 to { $most }.
one-substance = { $place }: it must have one of { $words }.

## What the value of a word must be: the end of the first sentence.

must-be = { $place }: { $key } must be { $rule }.
short-text = a text of at most { $most } characters
clean-text = a text without control characters
true-or-false = true or false
a-number = a number
a-number-or-text = a number, or a text with a unit such as "{ $example }"
ordinary-number = a number of ordinary size
few-pairs = a list of at most { $most } pairs
pairs = a list of pairs such as { $example }
layer-names = a list of layer names
a-table = a table such as { $example }
pair-of-numbers = a pair of numbers
# $bare says whether the thickness was typed without a unit.
thickness-span = { $bare ->
    [yes] above 0 and at most { $meters } ({ $inches }), not { $given }; a number without a unit is in meters
   *[no] above 0 and at most { $meters } ({ $inches }), not { $given }
}
span-of-thickness = { $low } to { $high } at this thickness, not { $given }
permeance-for = given for a material with a thickness, an air space or a fixed membrane
resistance-for = above 0, for a material with a thickness or an air space

## Tables of the kit's own library, told to who writes them.

no-column = The table { $table } lacks the column { $column }.
ragged-line = The table { $table }, line { $line }, does not have one value for each column.
no-id = no id
lacks-column = The table { $table }, line { $line } ({ $id }), lacks its { $column }.
id-again = The table { $table }, line { $line }, has the id { $id } a second time.
# $rule is "a number" or the message after this.
wrong-cell = The table { $table }, line { $line }, column { $column }: { $given } is not { $rule }.
points = made of points like "{ $example }"
no-kind-of-sheet = The table { $table }, line { $line }: there is no kind of sheet { $kind }.
in-a-row = The table { $table }, line { $line } ({ $id }): { $sentence }
lacks-a-number = The table { $table }, line { $line } ({ $id }), lacks a number it needs.
id-in-two-tables = The id { $id } stands in two tables of the library.
