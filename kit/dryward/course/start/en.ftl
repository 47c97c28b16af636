### Start here: the index of the lessons.

## The page

all-done = All { $done } lessons are done. Come back when a review is due.
go-on-with = { $done } of { $pages } lessons done. Go on with: { $title }.
session = { $title }, { $minutes } min
pathway-option = { $title }, { $span }
lesson-title = { $number }. { $title }
when = When
lesson = Lesson
minutes = Minutes
state = How it stands
plan = Your way through
pathway = Pathway
resume = Go on: { $number }. { $title }
state-done = ✓ done
state-best-after = best after: { $needs }
state-begun = begun
state-open = open
# $state is one of the four above.
state-for-you = { $state }; for you
reviews = Due for review
# $stage is 1 for the first review of a lesson.
review-due = after { $stage ->
        [1] two days
       *[other] two weeks
    }: answer its checks again, with new numbers
units-us = US: °F, R, perm
units-si = SI: °C, RSI, sd
settings = How the pages look
units = Units
type-size = Size of type
type-usual = usual
type-larger = larger
type-large = large
projector = Large type for a projector
instructor = Instructor: unlocked, with a show of hands
test-show = Show ten questions
test-choose = choose
test-place = Which lessons are for me?
test-for-you = For you: { $titles }.
test = Know some of it? Ten questions to skip ahead
paper = For the instructor: a quiz on paper, and its key
quiz-number = Number of the quiz
quiz-number-hint = the same number, the same quiz
quiz-make = Make quiz and key
quiz-asks = It asks
# $what is a set of questions, $count how many they are.
quiz-asks-what = { $what ->
        [kinds] one of each kind
        [exit] what the four-hour day ends with
       *[beliefs] what each belief of the trade leads to
    } ({ $count } questions)
# $what is the quiz or its key.
quiz-save = Save the { $what ->
        [quiz] quiz
       *[key] key
    }
quiz-number-wrong = The number of the quiz is "{ $quiz_seed }"; it must be a whole number, 0 to 999999999.
## How long it takes

span-both = { $hours } h { $minutes } min
span-hours = { $hours } h
span-minutes = { $minutes } min
