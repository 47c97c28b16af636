### The lessons as they are found and read, and the notebooks that are written from them.

## Faults of a lesson's folder.  $file is a file's name, $key a key in it, $reason a whole sentence or what a program said.

folder-name = The lesson folder "{ $folder }" must be named in small letters, digits and underscores.
no-file = The lesson folder { $folder } has no { $file } that can be read.
unreadable = The lesson file { $file } cannot be read: { $reason }.
lacks-table = The lesson file { $file } lacks the table [{ $table }].
not-in-english = The lesson file { $file } of this language has a key "{ $key }" that is no word of the English lesson.
not-whole = In the lesson file { $file } the { $key } is { $value }; it must be a whole number from 0 up.
fault = The lesson file { $file } has a fault: { $reason }
# $line is 0 where the line is not known.
no-python = { $line ->
    [0] { $file } is no Python: { $reason }.
   *[other] { $file }, line { $line } is no Python: { $reason }.
}
name-taken = { $file } has the name of { $name }, which is another lesson's.
number-taken = { $file } has the number { $number }, which is another lesson's.

## An instructor's own lessons.

own-no-folder = Your own lessons are looked for in { $folder }, which is no folder.
left-out = Your lesson { $folder } is left out. { $reason }
needs-unknown = Your lesson { $folder } is left out. It needs a lesson first: { $reason }
cannot-write = { $file } cannot be written: { $reason }.
cannot-open = Your lesson { $folder } cannot be opened: { $reason }.
# An error of Python: its name and what it says.
error = { $error }, { $reason }
error-in = { $file }, line { $line }: { $error }, { $reason }
worked-stops = The code of [worked] in { $file } stops: { $reason }.
new-name = A lesson is named in small letters, digits and hyphens, such as wet-corner, not "{ $name }".
new-exists = There is a { $file } for the lesson { $name } already; nothing was made.

## A notebook, in Markdown.

# $number is 0 for the index, which is not counted.
titled = { $number ->
    [0] { $title }
   *[other] { $number }. { $title }
}
# A line of the list of lessons.
in-order = { $number }. [{ $title }]({ $file }), { $minutes ->
    [one] { $minutes } minute
   *[other] { $minutes } minutes
}
opens = The page of this lesson: a few steps, each with a bet or a move, and then the full page with all sliders.
number-heading = The number behind the picture
next = Next
# $next and $start are links.
go-on = Go on with { $next }, or back to { $start }.
back = Back to { $start }.

## The table of lessons in the README.

table-lesson = lesson
table-question = the question it answers
table-minutes = minutes
