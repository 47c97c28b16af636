### What is refused at a prompt. $given is what was typed; words of code stay as they are.

number-or-text = The { $quantity } must be a number or a text with its unit, not "{ $given }".
numbers-or-texts = The { $quantity } must be numbers or texts with units, not "{ $given }".
no-roof = A roof is an assembly, the id of a preset or the path of a file, not "{ $given }".
# $what begins the sentence: "The room air".
no-air = { $what } must be an air, such as { $example }, not "{ $given }".
no-place = A place is one of the kit's, the path of a weather file, a year of hours or twelve monthly means, not "{ $given }".
no-leak-in-months = Twelve monthly means cannot count an air leak; leave { $word } out, or give a place with hours.
# $near is the name that comes nearest, where one does.
no-such-name = { $found ->
    [yes] dryward has no "{ $name }"; did you mean { $near }?
   *[no] dryward has no "{ $name }".
}
