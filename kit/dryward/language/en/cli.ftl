### What is typed: the help of each command, and the lines it prints.

## The command line

about = Lessons on moisture in roofs and walls, and the physics behind them.
usage = usage:{" "}
arguments = positional arguments
options = options
command-name = COMMAND
help = show this help message and exit
version = show program's version number and exit
command-lessons = open the lessons in JupyterLab (what plain `dryward` does)
command-pages = serve the lessons as web pages that show no code
command-board = show how a class stands: who is where, predictions, checks
command-check = judge one assembly file in words
command-report = write the report of one assembly file
command-evidence = compute every published check again and print the table
command-api = show what can be typed in Python
command-bench = measure the speed of the kit beside its peers
# Under the usage of a command; $line is one of those above, with a capital.
description = { $line }.
# Before any sentence on the error stream.
refused = dryward: { $why }
stopped = dryward: stopped.
failed = dryward: the kit itself failed ({ $kind }: { $words }); please report it. { $variable }=1 shows where.
not-typed-so = { $why }; `{ $command } --help` lists what can be typed.
whole-number = { $argument } is "{ $given }"; it must be a whole number
a-number = { $argument } is "{ $given }"; it must be a number
one-of = { $argument } is "{ $given }"; it must be one of { $choices }
missing = { $arguments } is missing
not-understood = "{ $word }" is not understood here
did-you-mean = "{ $word }" is not understood here; did you mean { $near }
expects = Argument { $argument }: expected one argument
takes-nothing = Argument { $argument }: ignored explicit argument { $given }
ambiguous = Ambiguous option: { $given } could match { $options }
not-together = Argument { $argument }: not allowed with argument { $other }

## What stands for a value in the help

meta-file = FILE
meta-name = NAME
meta-folder = FOLDER
meta-topic = TOPIC
meta-group = GROUP
meta-address = ADDRESS
meta-draws = DRAWS

## A roof, its place and its room

place = an invented place: { $places }
name-after-name = { $first }, { $next }
epw = a weather file
zone = climate zone of the code, such as 6 or 4C
edition = of the codes; otherwise the newest whose text was read
humidity = room humidity in the heating season, such as 40 or 40%
room-temperature = room temperature in the heating season, such as 70F or 21C
years = most years of the hourly run, 1 to 10; it ends when the year repeats
design = the year it is designed for; otherwise that of the file
spread = bands of the hourly years from so many draws of the uncertain inputs ({ $draws } when no number is given)
steady = leave the hourly years out
quick = the verdict alone: no uncertain inputs, other design years or room humidities are tried
no-toml = { $folder }: there is no .toml file in this folder.
spread-or-steady = The spread is of the hourly years: leave out --steady or --spread.

## check

check-files = an assembly or job file, a folder, or a preset
check-all-places = check each roof in all invented places
check-workers = processes to use; otherwise one for each core
check-scheduler = a running Dask scheduler to use instead
check-units = units of the printed numbers
check-json = print everything that was found as JSON, SI units
done-of = { $done } of { $total }
done-of-percent = { $done } of { $total } %
roof-and-place = { $roof }, { $place }
one-of-many = { $name }: { $headline }
check-line = { $mark } { $asked } { $said }.
number-of = { $label }: { $amount }
limits = Limits: { $limits }
rule = Rule: { $source }.
highest-humidity = { $leak ->
    [yes] Highest room humidity in winter at which the hourly year with the assumed leak is dry: { $humidity }.
   *[no] Highest room humidity in winter at which the hourly year is dry: { $humidity }.
}
none-tried = none that was tried
design-year = { $leak ->
    [yes] Design year, { $design } with the assumed leak: { $state }.
   *[no] Design year, { $design }: { $state }.
}
code-rows = Code rows are { $edition }.
as-adopted = As adopted locally; the building official decides.

## report

report-file = an assembly or job file, or a preset
report-output = where to write it: a name in .pdf or .html
report-paper = otherwise letter for US units, a4 for SI
report-overwrite = replace a file of that name
report-ending = The report is written as .pdf or .html, not { $ending }.
no-ending = a file without an ending
report-there = { $file }: there is already a file of that name; --overwrite replaces it.
report-no-folder = { $file }: it cannot be written; there is no folder { $folder }.
report-one-roof = A report is about one roof; { $file } holds { $count }.
report-not-written = { $file }: it cannot be written ({ $why }).
report-written = { $file }: { $headline }

## evidence

evidence-topics = of { $topics }; all if none
evidence-failed = print only the checks that fail
evidence-summary = print one line for each source instead of each check
evidence-json = print the whole table as JSON
evidence-readme = write the summary into the README of this checkout
evidence-all-topics = --readme writes the table of all topics; leave the topics out.
table-stands = The table stands in { $file }.
evidence-counted = { $outside ->
    [0] { $count } published or worked values computed again; none outside the allowed difference.
   *[other] { $count } published or worked values computed again; { $outside } outside the allowed difference.
}
evidence-own = { $outside ->
    [0] Not counted: { $count } of the kit's own, invented for teaching; none outside the allowed difference.
   *[other] Not counted: { $count } of the kit's own, invented for teaching; { $outside } outside the allowed difference.
}
column-expected = expected
column-got = got
column-difference = difference
column-tolerance = tolerance
column-unit = unit
own-topic = { $topic }, the kit's own, not counted
from-source = from { $source }, { $where } ({ $how })
all-topics = all
head-topic = topic
head-values = values
head-read = read
head-worked = worked outside the kit
head-memory = from memory
head-sources = sources
head-outside = outside
head-closest = closest to its limit
head-own = not counted: the kit's own
head-source = source
head-agree = agree
head-share = largest share of the allowed difference
words-only = words only
not-counted = not counted, { $own }: { $source }

## board

board-folder = where the learners' answers are kept, a folder for each
board-nobody = Nobody has opened a lesson yet; the answers are looked for in { $folder }
board-learner = learner
board-lesson = lesson
board-predicted = predicted
board-checks-right = checks right
board-first-try = at first try
board-finished = finished
board-minutes-ago = minutes ago
board-right = right
board-checks = checks: { $right } of { $answered } right, { $first } of { $tried } at the first try
board-said = { $count ->
    [one] said { $count } time: { $claim }
   *[other] said { $count } times: { $claim }
}

## lessons

lessons-folder = where your own copy of the lessons is kept
lessons-port = port of the local server (8888; the next free one)
lessons-lesson = lesson to open first: its number or its file name
no-browser = print the address and open no browser
lessons-authors = for who writes lessons
lessons-own = from now on also lessons of your own; - for none
lessons-new = make a lesson that works, for you to change
lessons-write = in a checkout: write what follows from the folders
lessons-check = in a checkout: name what is not as the folders say
port-range = The port is { $port }; it must be 1 to { $most }.
lessons-are-in = Your lessons are in { $folder }
lessons-newer = you have changed a lesson that is newer in the kit; the new one is beside it: { $name }
own-forgotten = No lessons of your own are taken any more.
own-is-a-file = { $folder } is a file; your own lessons need a folder.
own-not-made = { $folder } cannot be made: { $why }.
own-taken-from = Your own lessons are taken from { $folder }
own-name-a-folder = Name a folder for your own lessons: dryward lessons --own FOLDER --new NAME.
own-made = A new lesson, { $name }, number { $number }:
own-change-it = Change it, then type dryward lessons --write.
in-a-checkout = Type this in the folder of a checkout, with the kit installed from it.
written = written: { $file }
removed = removed: { $file }
stale = not as the lesson folders say: { $file }
all-as-folders-say = All is as the lesson folders say.
open-address = Open this address in a browser:
press-to-stop = Press Ctrl-C here to stop.

## pages

pages-share = let a class on the same network in, with a password
pages-address = address to serve at: 127.0.0.1, or with --share this computer's own
pages-port = port (8866)
pages-mine = one learner: keep the answers with your own lessons
pages-ready = lessons kept ready to open at once (4)
pages-most = most lessons open at the same time (60)
pages-away = minutes until a lesson nobody looks at is closed (5)
pages-certificate = certificate file, to serve by https
pages-certificate-key = key file of the certificate
ready-range = The number kept ready is { $number }; it must be 1 to { $most }.
most-range = The most open lessons is { $number }; it must be 1 to 500.
away-range = The time until a lesson is closed is { $minutes } minutes; it must be 0.05 to 600 minutes.
pages-need = The pages need { $library }, which is not installed; { $how } adds it.
pip-of-checkout = `pip install -e { $wanted }`, typed in { $folder } with the pip of this environment,
pip = `pip install { $wanted }`
mine-or-share = --mine keeps one learner's answers; it cannot be shared. Leave one of --mine and --share out.
address-not-understood = The address { $address } is not understood; write numbers, like 192.168.1.20.
address-open = At { $address } others on the network could open the pages; add --share, which asks for a password.
password-short = The password in { $variable } has { $count } signs; it must have { $least } or more.
certificate-and-key = A certificate needs its key: give --certificate and --certificate-key together.
no-file = There is no file { $file }.
no-network = This computer is on no network; give the address with --address.
board-address = The instructor's board:  { $address }
only-here = Only this computer can reach them. Press Ctrl-C here to stop.
class-opens = The class opens this address in a browser and types the password:
class-password = password   { $password }
class-shared =
    What is shared: the lesson pages, and for each browser its own answers. No file, no code
    and no other learner's answers can be seen. Each lesson runs on this computer.
    The password is good until you stop, here with Ctrl-C; the next start makes a new one.
class-answers = The answers are kept in { $folder }
class-board = The instructor's board, for you alone:  { $address }
class-http = By http, who listens on the network can read along: use a network of your own or --certificate.

## api

chapter-api = At a prompt
chapter-building = What is built
chapter-weather = What is around it
chapter-weather-indoor = The air indoors
chapter-verdict = What it means
chapter-physics-steady = The steady state
chapter-physics-drying = Drying
chapter-physics-limits = Along a slider
chapter-physics-monthly = Twelve months
chapter-physics-hourly = Hour by hour
chapter-physics-ventspace = The vent space
chapter-physics-airleak = The air leak
chapter-physics-sky = Sky and mold
chapter-air = Moist air
chapter-units = Units
chapter-panels = The lessons
# The head of the page of all names, in Markdown; the code in it stays as it is.
api-head =
    # What can be typed in Python

    Made by `dryward api --write` from the docstrings; `dryward api NAME` shows one of them in the
    terminal. From the import to the picture:

    ```python
    import dryward as dw

    roof = dw.roof("vented-vault").replace("inner membrane", dw.membrane("1 perm"))
    state = dw.profile(roof, dw.Air("70 F", "40 %"), dw.Air("20 F", "80 %"))
    state.plot()
    dw.year(roof, place="cold", room="40 %", ach50=3).verdict
    ```

    Numbers are SI: degrees Celsius, Pa, m, kg, s, W; humidity 0 to 1; a text such as `"70 F"` is
    read with its unit. Layers run from inside to outside and a flux is positive outward. A roof,
    and every result, has `plot()` and `to_table()`; a result says what it means in `verdict`.
api-name = such as profile, Assembly or steady.sweep; all if none
api-write = write { $file } of this checkout
no-folder-here = There is no { $folder } here; type the command in the folder of the checkout.
page-stands = The page stands in { $file }.
no-readme-here = There is no { $file } here; type the command in the folder of the checkout.
no-place-for-table = { $file } has no place for the table, between { $begin } and { $end }.

## bench

bench-groups = of { $groups }; all if none
bench-json = print the measurements as JSON
bench-readme = write the table into the README of this checkout
bench-all-groups = --readme writes the table of all groups; leave the groups out.
bench-done = { $missed ->
    [0] { $count } measurements; no targets missed.
   *[other] { $count } measurements; { $missed } targets missed.
}
bench-saturation = saturation pressure, one of a million
bench-dew-point = dew point, one of a million
bench-arrays = { $library }, arrays
bench-singly = { $library }, one by one
bench-vectorize = { $library }, NumPy vectorize
bench-compiled = { $library }, compiled by Numba
bench-fixed = steady profile, fixed membrane
bench-variable = steady profile, variable membrane
bench-sweep = sweep of 10 000 steady states
bench-one-after-another = one profile after another
bench-sweep-variable = the same with a variable membrane
bench-year = hourly year, { $cells } cells, everything on
bench-year-finer = the same with { $cells } cells
bench-batch = a year of { $count } on { $cores } cores at once
bench-one-at-a-time = one at a time
bench-hour = an hour of a roof, humidity within { $error }
bench-integrator = SciPy's LSODA, within { $error }
bench-first-ever = first hourly run ever, compilation and all
bench-first = first hourly run of a new process
bench-slider = slider to picture, strips and words included
bench-picture = one picture, its ground kept
bench-drawn-again = the whole drawn again
bench-pyplot = a new figure by pyplot
bench-import = import of the pages
bench-first-picture = new process to first picture, steady lesson
bench-memory = memory of a steady lesson
bench-memory-bare = memory of NumPy, Matplotlib and the widgets alone
bench-no-peer = { $library } is not installed, so there is nothing to compare with; install dryward[test].
bench-times-as-fast = { $number } times as fast as { $other }
bench-aim = { $rule ->
    [at-least] at least { $target } { $unit }
   *[at-most] at most { $target } { $unit }
}
bench-times = times
bench-met = met: { $aim }
bench-missed = MISSED: { $aim }
bench-aim-missed = { $aim } (missed)
bench-head-work = work
bench-head-took = took
bench-head-beside = beside its peers
bench-head-aim = aim
bench-when = { $cores ->
    [0] Medians of one run on { $day }, { $system }, Python { $python }, unknown cores.
   *[other] Medians of one run on { $day }, { $system }, Python { $python }, { $cores } cores.
}
