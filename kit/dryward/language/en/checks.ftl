### The sentences that refuse a number, a text or a name.

## $what begins the sentence: a noun of names.ftl, with a capital. $of is the name of a thing, such as a layer.

of = { $what } of { $of }
out-of-range = { $what } is { $given }; it must be { $rule }{ $stop ->
    [yes] .
   *[no] { "" }
}
amount = { $number } { $unit }
no-number = not a number
too-far = { $large ->
    [yes] too large
   *[no] too small
}
at-least = { $above ->
    [yes] above { $low }
   *[no] at least { $low }
}
from-to = { $above ->
    [yes] above { $low } and at most { $high }
   *[no] { $low } to { $high }
}
a-number = { $what } must be a number, not { $given }.
one-number = { $what } must be one number, not { $given }.
# $kinds is one of the phrases of names.ftl with an article: "an air leak or an air flow".
of-a-kind = { $what } must be { $kinds }, not { $given }.
rising = { $what } must rise from point to point, but { $right } follows { $left }.
# $shape is how many numbers there are in each direction: "2 x 4".
shape = { $name } ({ $shape })
together = { $named } do not fit together in shape.

## A text that is no quantity. $quantity is a noun of names.ftl, $examples how it is written, each quoted.

quoted = "{ $text }"
not-understood = The { $quantity } "{ $text }" is not understood; write it like { $examples }.
no-unit = The { $quantity } "{ $text }" has no unit; write it like { $examples }.
comma-of-two-meanings = The { $quantity } "{ $text }" has a comma that may mean thousands or a decimal; write it like { $examples }.

## A name that is not there. $kind says of what, in a word of names.ftl; $near, $every are names that are there.

there-is-no = There is no { $kind } "{ $name }".
did-you-mean = There is no { $kind } "{ $name }"; did you mean { $near }?
it-must-be = There is no { $kind } "{ $name }"; it must be { $rule }.
there-is = { $count ->
    [one] There is no { $kind } "{ $name }"; there is { $every }.
   *[other] There is no { $kind } "{ $name }"; there are { $every }.
}
