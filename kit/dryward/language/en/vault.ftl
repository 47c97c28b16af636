### The roof that the questions are asked about.

# Why a roof in which no water gathers is damp: a piece of a sentence.
wood-settles = the wood would settle at { $moisture } MC
mold-can-grow = mold can grow there
damp-all-the-same = It is damp all the same: { $why }.
