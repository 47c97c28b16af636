### Questions: what is said to an answer. The questions themselves stand with their lessons.

right = Right.
# $why is a whole sentence.
right-because = Right. { $why }
# $seems and $right are whole sentences.
wrong = Why it looked right: { $seems } What is right: { $right }
seed = A seed is a whole number from 0 up, not { $given }.

# Of a day on which no water gathers and that is not dry either.
damp-by-wood = It is damp all the same: the wood would settle at { $moisture } MC.
damp-by-mold = It is damp all the same: mold can grow there.
