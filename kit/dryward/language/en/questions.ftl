### Questions: what is said to an answer. The questions themselves stand with their lessons.

right = Right.
# $why is a whole sentence.
right-because = Right. { $why }
# $seems and $right are whole sentences.
wrong = Why it looked right: { $seems } What is right: { $right }
seed = A seed is a whole number from 0 up, not { $given }.
