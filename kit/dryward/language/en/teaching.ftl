### What teaches: the pages for the instructor, the quiz on paper, practical tasks, the learner's file.
### The words of the questions stand in kinds.ftl, those of the lessons beside them, the lists of words, beliefs,
### cautions and pathways in files of their own names, as beliefs.toml.

## The instructor's sheet of a lesson; # and * are Markdown

sheet-opens = *{ $minutes } minutes. Opens with:* { $question }
sheet-goals = Goals
sheet-ask = Ask first
sheet-prediction = The prediction
# $key is a letter.
sheet-right = Right is **{ $key }**. { $reveal }
sheet-say = What they will say
sheet-all-beliefs = All { $count } beliefs can come back here. Name the one you hear, and ask for a number.
# $step is the step of this lesson in which the belief is bet on, 0 where none is.
sheet-belief = { $step ->
    [0] "{ $claim }" { $seems } *Right is:* { $right } *Grant them:* { $grain }
   *[other] "{ $claim }" { $seems } *Right is:* { $right } *Grant them:* { $grain } *Bet on it:* step { $step }.
}
sheet-split = If the vote splits
sheet-move-on = With nine of ten right, move on.
sheet-props = Props
sheet-traps = Traps
sheet-more = One more
sheet-home = Take home
sheet-cautions = Cautions
sheet-caution = **{ $title }.** { $text }

## The page of pathways

pathways = Pathways
pathways-intro = Three ways through the lessons. Any lesson also opens alone. The last column is walked: what one learner needs for the lessons of that row, each bet and each check wrong once. The rest of the time is yours: for talk, props, smoke and lumber.
# $time and $home are as below.
pathway = { $who } In all { $time }.
pathway-homework = { $who } In all { $time } in class and { $home } at home.
hours = { $count } hours
hours-and-minutes = { $hours } h { $minutes } min
pathway-table = | from | minutes | what | lessons | of it on the screen |
no-lesson = none
short-of-time = Short of time
short-of-time-cut = Cut the clear night first, then step 4 of the film that changes (which way round it goes), then inside the film. Never cut the bet that opens a lesson.
skilled-people = Skilled people
skilled-people-pretest = Give them the pre-test of { $count } items. It names the lessons they can skip.

## The page of beliefs; | is Markdown

beliefs = Beliefs, and what breaks them
beliefs-intro = Each lesson was read as by a builder who holds a belief and would like to keep it. In one step of the lesson two cases look alike to that builder and come out opposite, and both are bet on before either is shown. A check then takes the same thing to another season or another assembly. At the end the page asks: do you still say so?
beliefs-board = The board tells, belief by belief, how many bet on it before and how many still say so after. When somebody says one of these lines in class, open the step that is named here and let the class bet.
beliefs-table = | what is said | lesson and step | what breaks it |
beliefs-place = lesson { $number }, step { $step }
beliefs-row = | { $claim } | { $place } | { $broken } |
beliefs-one-by-one = One by one
beliefs-changed = Changed for it: { $text }
beliefs-survives = What can still be said: { $text }
beliefs-kind = On paper: `{ $text }`

## The page of quizzes; ` and | are Markdown, and $command, $exit, $si and $kind are typed as they stand

quizzes = Quizzes
quizzes-make = Make one
quizzes-seed = A quiz is made from a seed, which is a whole number. The same seed gives the same paper on every machine. Another seed draws new numbers for a retake.
quizzes-command = Type this in a shell: `{ $command }`
quizzes-print = Open both files in a browser and print them. The code at the foot of each page tells which key belongs to which quiz.
quizzes-exit = Use `{ $exit }` for the { $count } items of the exit quiz of the four-hour day. Use `{ $si }` for metric pages.
quizzes-kinds = The kinds
# $marked are the kinds that a person marks.
quizzes-count = There are { $count } kinds of questions, and { $letters } of them have letters to circle. A person marks { $marked } with the rubric: it is a drawing with three sentences. The table has each kind with its usual numbers.
quizzes-wrong = Each wrong answer stands for one belief or one slip. The key names it. So a wrong letter tells you what to teach next week.
quizzes-table = | kind | question | where it counts |
quizzes-kind = | `{ $kind }` | { $prompt } | { $counts } |
# Where a kind counts, in a row after the kind: starred, in the exit quiz, in the pre-test.
quizzes-starred = starred
quizzes-in-exit = exit quiz
# $lessons are numbers of lessons.
quizzes-in-pretest = pre-test for { $lessons }
quizzes-pass = A pass
quizzes-passed = A pass is { $share } of the lettered items, with all the starred ones right.
quizzes-failed = A person who fails takes a new seed after a few days. Give back the beliefs behind the wrong letters, not only the score.
quizzes-pretest = The pre-test
quizzes-pretest-items = Skilled people can take { $count } items first. The kit then lists the lessons that still pay off for them.
quizzes-review = Review
quizzes-again = On a screen, lessons come back with new numbers after { $first } days, and again after { $second } days. On paper, print a new seed of { $count } items for the next meeting, and one more for a meeting later on.
quizzes-tasks = Practical items
quizzes-task = These lessons have a task, which is to set the sliders so that something holds: { $lessons }. There is more than one right way. The kit works the numbers and says yes or no. Ask for the reason, not only for the yes.

## The handout of predictions

predictions = Say it before you see it
predictions-intro = Write your answer and one reason. No computer is needed. Bring it to the next meeting.
predictions-name = Name: ______________________
predictions-because = Because: ______________________________________________

## Amounts in a text

rsi = RSI { $number }
pints = { $number } pints
quarts = { $number } quarts

## The glossary

glossary = Glossary
glossary-intro = The words of the kit, one plain meaning each. This page is made from the kit's own word list by
    `dryward.teaching.words.glossary_page()`; change the list, not the page.
term = **{ $term }**: { $meaning }
term-avoid = **{ $term }**: { $meaning } *Do not say:* { $avoid }

## A quiz on paper, and its key

quiz-title = Moisture in roofs: quiz
quiz-name = Name: ______________________________
quiz-date = Date: ______________
quiz-how = Circle one letter for each question. A calculator is welcome.
# $code finds its key.
quiz-foot = Quiz { $code }. The roofs and films here are made up for teaching. A quiz is not a license.
key-title = Key: { $title }
key-pass = Pass: { $share } of the items, and all those with a star right. A retake draws new numbers with another seed.
key-behind = Behind it:
key-marked = Marked by a person, 0 to 2 points each: { $answer }.
key-foot = Key to quiz { $code }.

## A practical task

# $control is what the page calls a slider.
stays-as-it-is = { $control } stays as it is in this task; set it back.
too-many-changes = You changed { $count } things; { $most } at most.

## Errors: $file is the name of a file

missing = The teaching file { $file } is missing; install the kit again.
unreadable = The teaching file { $file } cannot be read: { $reason }.
unknown-key = The teaching file { $file } has a key "{ $key }" that is not known.
lacks-key = The teaching file { $file } lacks the key "{ $key }".
no-session = { $file } names a session that is not there: { $session }.
pretest-answers = The pre-test has { $count } answers, not { $given }.
quiz-no-kind = A quiz needs at least one kind of question.
quiz-no-seed = A quiz needs a seed, a whole number from 0 up.
quiz-answers = The quiz has { $count } questions; { $given } answers were given.
type-size = Type size is { $given }; it must be { $low } to { $high } points.
setting = The setting { $name } is { $given }; it must be { $allowed }.
cannot-be-written = { $file } cannot be written: { $reason }; your answers are kept while this is open.
no-progress = { $file } cannot be read as a progress file; it is kept aside and a new one is begun.
cannot-be-read = { $file } cannot be read: { $reason }.
strange-progress = { $file } is no progress file of this kit; it is kept aside and a new one is begun.
newer-progress = { $file } was written by a newer version of this kit; update the kit, nothing was changed.
