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

## The first water

given = the room at { $room }, January in an invented town, { $fill } of fiber between painted drywall and OSB; air leaks of a usual house, which has { $area }, at { $push }
done = What is done to the roof
done-bare = as it is: painted drywall, with leaks
done-vents = more vents, which pull more air
done-plastic = plastic inside, the leaks stay
done-breathes = a house that breathes: twice the leaks
done-sealed = no leaks, and a film it can dry through
place = Where you are
place-cold = cold
place-very-cold = very cold
place-cool-marine = cool, by the sea
place-mixed-humid = mixed and humid
place-hot-humid = hot and humid
place-hot-dry = hot and dry
gathers = { $frost ->
        [yes] Frost: { $amount } a day
       *[no] Water: { $amount } a day
    }
none-gathers = No water gathers
leak = Air leak

beat-first-say = A roof in a cold January. What do you think keeps it dry most of all?
beat-first-ask = Take a letter in the picture, or choose from the list. A wrong guess costs nothing.
beat-first-first = As it is
beat-first-second = The driest of the four
beat-first-answer = As it is, the deck takes in { $bare }. With all three done, { $sealed }.
beat-first-also = { $flux } and { $other }

beat-try-say = Now try each of them, one at a time, on the same roof, over the same family.
beat-try-ask = Choose until less than a tenth of the water is left.
beat-try-control = What is done
beat-try-answer = Of { $was } a day, { $now } are left. The room air is as it was.
beat-try-also = { $flux }

beat-run-say = The leaks are closed, and the room is damp. The water is back.
beat-run-ask = Slide the humidity of the room down until no more gathers.
beat-run-answer = At { $humidity } no more gathers. At { $damp } it was { $before } a day.

beat-place-say = All that was in a cold town. Where are you?
beat-place-ask = Choose a place, and see the same roof there, as it was at first.
beat-place-answer = { $some ->
        [yes] There a January day, at { $cold }, brings { $water }.
       *[no] There no water gathers in January, at { $cold }.
    } { $inward ->
        [yes] In July, over a cooled room, vapor pushes inward.
       *[no] Even in July, over a cooled room, vapor pushes outward.
    }
beat-place-also = The lesson that begins there is number { $number }, { $title }. All of them are on the next page.

## What one may want to know

wants = What do you want to know?
want-ground = From the ground up: what is in the air?
want-winter = Why is my roof wet in winter?
want-summer = What does air conditioning do to a roof?
want-leaks = What do holes in the ceiling cost?
want-vents = Do I need vents, and how many?
want-readings = I have a meter or a logger. What does it say?
want-roof = I have a roof to build.
