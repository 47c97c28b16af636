### The pages of a class: the door, the first page, a lesson's frame, the instructor's board, and what goes wrong.

## Every page

page-title = { $title } · dryward
page-skip = Skip to the page
page-lesson = { $number }. { $title }
page-minutes = { $minutes } min

## The door

page-come-in = Come in
page-door = Lessons on why a vaulted roof stays dry
page-password = Password of this class
page-password-hint = It is on the screen of the class computer. Large or small letters make no difference.
not-the-password = That is not the password. It is on the screen of the class computer.

## The first page

page-lessons = Lessons
page-why = Why a vaulted roof stays dry
page-your-place = Your place
page-go-on = Go on with { $lesson }
page-time-to-review = Time to review: { $lessons }
page-lesson-after-lesson = { $first }, { $next }
page-ways = Ways through the lessons
page-way = { $minutes ->
    [0] { $who } { $hours } h in all.
   *[other] { $who } { $hours } h { $minutes } min in all.
}
page-start-here = { $start }: how a page works, ten questions to find your place, size of type, a quiz on paper.
page-start = Start here
page-your-answers = Your answers
page-your-code = Your code is { $code }. With it you can go on at another computer of this class. No name is kept.
page-somebody-else = Somebody else's turn? Type your code, or leave it empty for a fresh start.
page-change-places = Change places
finished = finished
begun = begun
looked-at = looked at

## A lesson

lesson-skip = Skip to the lesson
lesson-ways = Lessons
lesson-back = Back: { $number }. { $title }
lesson-next = Next: { $number }. { $title }
lesson-all = All lessons
lesson-numbered = { $number }. { $title }
lesson-opening = The lesson is being opened ...
# $all is a link to all lessons.
lesson-not-opened = This lesson could not be opened. Go back to { $all }, or load this page again.
lesson-all-in-sentence = all lessons
lesson-stopped = This lesson has stopped. What you have answered is kept.
lesson-again = Open the lesson again
lesson-out-of-reach = The class computer is out of reach. What you have answered is kept; this page tries again by itself.

## The instructor's board

page-board = Board
page-class-stands = How the class stands
page-board-hint = From the learners' own answers on this computer. No names are kept, and nothing leaves it. Renewed every ten seconds.
nobody-yet = Nobody has opened a lesson yet.
here-now = { $lesson }: { $here } here now
here-now-checks = { $lesson }: { $here } here now; checks { $right } of { $answered } right, { $first } of { $tried } at the first try
page-chose = Chose
page-prediction = Prediction
page-choice = { $key }. { $text }
page-right = ✓ right
behind-wrong = Behind the wrong answers: { $beliefs }
belief-times = { $claim } ({ $times })
# A table: a belief, how many bet on it before it was shown, and how many still say so after the checks.
belief-said = What is said on the job
held-before = Bet on it before
held-after = Still says so after
belief-after-belief = { $first }; { $next }
page-learners = { $count ->
    [one] { $count } learner
   *[other] { $count } learners
}
page-code-begins = Code begins
page-head-lesson = Lesson
page-predicted = Predicted
page-checks-right = Checks right
page-first-try = At first try
page-finished = Finished
page-minutes-ago = Minutes ago
right-of = { $right } of { $answered }

## What goes wrong

page-did-not-work = This did not work
page-to-first-page = To the first page
page-to-the-door = To the door
error-title = { $status ->
    [403] Forbidden
    [404] Not Found
    [405] Method Not Allowed
    [429] Too Many Requests
    [500] Internal Server Error
    [503] Service Unavailable
   *[other] Trouble
}
error = { $status ->
    [403] This page is only for the class. Go to the first page and type the password.
    [404] There is no such page here. The first page lists every lesson.
    [405] This address cannot be used in that way. The first page lists every lesson.
    [429] There were too many wrong passwords. Wait a minute, then try again.
    [503] All places on this computer are taken. Close a lesson, or wait a few minutes, and try again.
   *[other] Something went wrong on the class computer. Load the page again; what you have answered is kept.
}
busy = The class computer is very busy. Load the page again in a minute; what you have answered is kept.
unknown-code-title = Unknown code
unknown-code = Nobody here has that code.
no-port = The pages cannot be served at { $address }, port { $port }: { $why }.
no-answers-folder = There is no folder { $folder }; name the one in which the learners' answers are kept.
no-own-folder = Your folder on the class computer cannot be made. Is its disk full?
folder-not-used = The folder { $folder } cannot be used: { $why }.
lessons-missing = The lessons that came with the kit are missing; install the kit again.
lessons-not-copied = The lessons cannot be copied to { $folder }: { $why }.
lessons-not-into-file = The lessons cannot be copied to { $folder }: it is a file, not a folder.
register-there = { $file } is there already; move it away to make new passwords.
no-register = There is no { $file }; make the seats with `python -m dryward.school.hub`.
no-register-in-it = { $file } cannot be read as the register of a class.
memory-used-up = The memory that this seat may use is used up. Choose Kernel > Restart Kernel, close other lessons, and open this lesson again; your answers are kept.

## For who runs the server of a class: its options, and the lines of its log.

ready-help = Kernels kept ready
most-help = Most kernels in use at once
kernel-not-started = A kernel could not be started
register-folder-help = folder of the class, with its register
folder-help = folder of the class
first-number-help = user number of the first seat, when started by root; 0: all are one user
lesson-ended = { $seat } took { $taken } MB: its heaviest lesson was ended
seats-are-typed = Type how many seats there are and the folder of the class, such as 30 and a name.
seats-refused = dryward: { $why }
seat-and-password = { $seat }   { $password }
