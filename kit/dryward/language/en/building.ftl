### Building: what is said of materials, layers, roofs and their files.

## Materials.

# Begins a sentence: $what is a property of a material, $first what its curve is given over.
along = { $what }, { $first }
one-number-or-points = { $what } must be one number or at least two points ({ $first }, value).

## Files.

# A sentence about what is wrong in a file, after its name.
in-a-file = { $file }: { $sentence }
