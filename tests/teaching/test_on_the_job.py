"""What could mislead a builder on the job: numbers in notes, orders, cautions, reasons for a wrong answer."""

import re
from pathlib import Path

import nbformat
import pytest
from reading import notes

from dryward import air, units
from dryward.course.clear_night import questions as clear_night
from dryward.course.how_fast_perms import questions as how_fast_perms
from dryward.course.vent_space import questions as vent_space
from dryward.language import message
from dryward.physics.airleak import LONG_SHARE, LONG_SHARES, brought, orifice_flow
from dryward.teaching import beliefs, guide, kinds, lessons, pathways, practical, questions, words
from dryward.teaching.vault import air as some_air
from dryward.units import DAY, to_si
from dryward.verdict import criterion
from dryward.weather import Air

LESSONS = Path(__file__).parents[2] / "lessons"
HANDOUTS = LESSONS / "guide" / "handouts"
SEEDS = (None, *range(20))


def handout(name):
    return (HANDOUTS / f"{name}.md").read_text("utf-8")


def check(id, place, seed=None, system="us"):
    return questions.checks(id, seed, system)[place]


# --- what is taken home -------------------------------------------------------


def test_a_roof_that_dries_each_summer_is_not_yet_fine():
    months, hours = lessons.lesson("twelve-months"), lessons.lesson("hour-by-hour")
    assert any("mold in spring" in each for each in months.limits)
    for each in (months, hours):
        assert "how wet" in each.takeaway
        assert "how long" in each.takeaway
        assert "Do not ask" not in each.takeaway


def test_the_roof_that_climbs_has_more_than_one_cure():
    for seed in SEEDS:
        right = check("hour-by-hour", 1, seed).right.text
        assert all(word in right for word in ("leaks", "indoor RH", "layers"))


def test_vents_are_not_praised_without_the_clear_night():
    for text in (beliefs.belief("more-vents-always-help").grain, *notes("vent-space").traps):
        assert "do no harm" not in text
    assert "frost" in beliefs.belief("more-vents-always-help").grain


def test_calm_is_not_said_of_a_breeze():
    """The numbers are those of 8 W/(m2 K), which the page calls a breeze."""
    assert clear_night.below_air.__defaults__ == (8.0,)
    lesson = lessons.lesson("clear-night")
    said = [lesson.prediction.prompt, lesson.prediction.reveal, beliefs.belief("roof-never-colder-than-air").right]
    for seed in SEEDS:
        said += [each.prompt for each in questions.checks("clear-night", seed)]
    for text in said:
        assert "calm" not in text.lower(), text


def test_wind_brings_the_covering_nearer_to_the_air():
    belief = beliefs.belief("roof-never-colder-than-air")
    assert "strong wind it is closer" in belief.grain
    assert clear_night.below_air(20, 20.0, 20.0) < 0.6 * clear_night.below_air(20, 20.0, 8.0)


# --- numbers -------------------------------------------------------------------


def test_the_jars_of_colored_water_hold_a_tenth_of_the_winter():
    cold = to_si(20.0, "degF")
    drive = some_air(70, 40).vapor_pressure - air.saturation_vapor_pressure(cold)
    hole = brought(orifice_flow(1.0, to_si(1, "in2")), some_air(70, 40), cold, LONG_SHARE)

    def ceiling(*perms):
        return to_si(how_fast_perms.in_a_row(*perms), "perm") * to_si(32, "ft2") * drive

    waters = hole.excess, hole.stays, ceiling(40, 7), ceiling(40, 7, 1)
    past, stays, painted, filmed = (each * 150 * DAY / 10 / (1000 * to_si(1, "quart")) for each in waters)
    said = next(each for each in notes("the-hole-and-the-ceiling").props if "one tenth" in each)
    assert f"{{{past:.1f} quart}} for what the hole's air carries past. Pour all but {{{stays:.2f} quart}} away" in said
    assert f"{{{painted:.1f} quart}} for the painted ceiling" in said
    assert 4 * filmed == pytest.approx(0.5, abs=0.05)  # four cups in a quart
    assert "half a cup for the ceiling with a {1 perm} film" in said


def test_the_gaps_of_the_answer_are_that_of_the_question_and_twice_that():
    guess = lessons.lesson("vent-space").prediction
    for inches in (1, 2):
        carried = vent_space.power(inches, 20, vent_space.RAFTER, (20, 80))
        assert f"{words.number(carried, 'g/m2/day')} through a {inches} in. gap" in guess.reveal
    assert "a gap of 1 in." in guess.prompt


def test_cold_air_heated_is_not_the_warm_air_of_the_question():
    share = some_air(30, 80).vapor_pressure / some_air(70, 100).vapor_pressure
    assert f"about {100 * share:.0f} %, not 30 %" in lessons.lesson("read-the-air").prediction.reveal


def test_one_case_has_one_number_wherever_it_stands():
    """A reveal and a check print the same vapor pressures in both of their units."""
    reveal = lessons.lesson("which-way-vapor-goes").prediction.reveal
    last = check("your-roof", 0)
    assert last.given == {"inside": 70, "rh_in": 35, "outside": 20, "rh_out": 90}
    pair = re.search(r"Vapor pressure is .*? outside", last.right.reply).group()
    assert pair in reveal


@pytest.mark.parametrize(
    ("text", "pressure"),
    [
        (lambda: lessons.lesson("read-the-air").prediction.reveal, (70, 30)),
        (lambda: lessons.lesson("read-the-air").prediction.reveal, (30, 80)),
        (lambda: lessons.lesson("which-way-vapor-goes").prediction.reveal, (70, 35)),
        (lambda: lessons.lesson("which-way-vapor-goes").prediction.reveal, (20, 90)),
    ],
)
def test_mercury_is_turned_from_the_pressure_that_is_not_rounded(text, pressure):
    found = some_air(*pressure).vapor_pressure
    assert f"{units.show(found, 'pressure', 'us')} ({found:.0f} Pa)" in text()


def test_vapor_pressures_are_pressures_and_not_a_count():
    for id in ("which-way-vapor-goes", "your-roof"):
        for seed in SEEDS:
            for question in questions.checks(id, seed):
                assert not any(re.search(r"There are \d", each.reply) for each in question.choices)


@pytest.mark.parametrize("seed", SEEDS)
def test_what_fog_leaves_is_a_share_of_what_there_was(seed):
    found = check("vent-space", 0, seed)
    was, now = 100 - found.given["dry"], 100 - found.given["damp"]
    shares = {"a quarter": 1 / 4, "a third": 1 / 3, "two fifths": 2 / 5, "half": 1 / 2}
    share = re.search(r"Now it has (\d+) %, (.*) as much", found.right.reply)
    assert f"It had {was} % left until then" in found.right.reply
    assert int(share.group(1)) == now
    assert shares[share.group(2)] == pytest.approx(now / was)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_slip_by_thickness_can_be_made_from_the_prompt(seed):
    found = check("temperature-through-layers", 0, seed)
    inches = [float(each) for each in re.findall(r"([\d.]+) in\.", found.prompt)]
    assert len(inches) == 2
    cold, warm = found.given["outside"], found.given["inside"]
    slip = cold + (warm - cold) * inches[1] / inches[0]
    offered = {round(each.value, 6) for each in found.choices if each.belief == "inches-not-r"}
    assert offered <= {round(slip, 6)}


@pytest.mark.parametrize("seed", SEEDS)
def test_a_board_is_weighed_in_pounds_first(seed):
    us, si = (kinds.draw("storage", seed, system) for system in ("us", "si"))
    assert re.search(r"weighs [\d.]+ lb/ft² \(\d+ gr/ft²\) dry", us.prompt)
    assert re.match(r"(11|19) mm OSB weighs \d+ g/m² dry", si.prompt)


def test_what_a_leak_carries_past_is_not_said_to_stay():
    """All that air brings to a cold face stays only where all of it cools there, and the text says so."""
    for seed in SEEDS:
        for system in ("us", "si"):
            half = check("the-hole-and-the-ceiling", 0, seed, system)
            if "plane" in half.given:
                face, room = (to_si(float(each), "degF") for each in (half.given["plane"], 70))
                air = Air(room, half.given["rh"] / 100)
                past = brought(orifice_flow(1.0, to_si(1, "in2")), air, face).excess * 150 * DAY
                assert f"leaves about {words.number(LONG_SHARE * past, 'kg', system)}" in half.prompt
            else:
                assert "past the cold face, over and above what it can keep there" in half.prompt
                assert not re.search(r"\b(leaves?|stays?|left)\b", half.prompt.replace("the push stays", ""))
            which = kinds.draw("leak-or-diffusion", seed, system)
            assert ("about a tenth stays" in which.prompt) == (which.given["share"] == LONG_SHARE)
            assert ("all of its air seeps" in which.prompt) == (which.given["share"] == 1.0)


def test_what_is_assumed_of_a_leak_is_said_with_its_range():
    low, high = (f"{100 * each:.0f}" for each in LONG_SHARES)
    assert LONG_SHARE == 0.1  # the texts say a tenth
    for id in ("the-hole-and-the-ceiling", "vent-space"):
        told = next(each for each in lessons.lesson(id).limits if "assumption" in each)
        assert "tenth" in told
        assert f"{low} to {high} %" in told


def test_the_limits_of_the_state_are_those_of_the_table():
    winter, vent = criterion("winter-water"), criterion("vent-share")
    told = " ".join(lessons.lesson("the-hole-and-the-ceiling", "si").sources)
    assert f"Damp from {1000 * winter.caution:.0f} g/m² on" in told
    assert f"wet from {1000 * winter.damage:.0f} g/m² on" in told
    assert (vent.caution, vent.damage) == (0.5, 1.0)
    assert (
        "Damp when half of what the air can carry at most comes, wet when all"
        in lessons.lesson("vent-space").sources[-1]
    )
    task = words.shown(practical.task("within-the-reserve").text, "si")
    assert f"{1000 * winter.caution:.0f} g/m² in summer, here" in task
    assert f"{winter.caution * to_si(32, 'ft2'):.2f} kg" in task


def test_neither_path_is_said_to_do_it_all():
    """What lesson 10 leaves a learner with: both are counted, and neither cure is enough by itself."""
    takeaway = lessons.lesson("the-hole-and-the-ceiling").takeaway
    assert "Count both." in takeaway
    assert not re.search(r"first", takeaway, re.IGNORECASE)
    reveal = lessons.lesson("the-hole-and-the-ceiling").prediction.reveal
    assert "the drywall leads" in reveal
    assert "the hole leads" in reveal
    assert "There is no fixed number." in reveal
    belief = beliefs.belief("one-path-does-it-all")
    assert "count what stays" in belief.right
    assert "does carry most of it" not in belief.grain


def test_a_logger_question_reads_as_a_list():
    for seed in SEEDS:
        prompt = kinds.draw("logger-cause", seed).prompt
        assert re.search(r"Wetter after rain: (\d+) of (\d+) spells\.", prompt), prompt
        assert "likeness" not in prompt
        assert max(len(each.split()) for each in prompt.split(". ")) <= 12


# --- orders and cautions -------------------------------------------------------

ORDER = ("humid", "leak", "vents", "rain", "buil")


def in_order(text):
    places = [text.lower().find(word) for word in ORDER]
    return -1 not in places and places == sorted(places)


def test_a_wet_roof_is_asked_in_one_order_everywhere():
    bold = " ".join(re.findall(r"\d\. \*\*(.*?)\*\*", handout("wet-roof-order"))).replace(
        "Where does air leave", "leak"
    )
    asked = message("your_readings.cause-order")
    right = beliefs.belief("wet-roof-needs-vents").right
    for text in (bold, right[right.index("order") :], asked[asked.index("order") :]):
        assert in_order(text), text
    for text in (handout("wet-roof-order"), right, asked):
        assert "the wet spot follow" in text


CAUTIONS = {
    "temperature-through-layers": {"in-class"},
    "the-hole-and-the-ceiling": {"lead-and-asbestos", "falls", "fuel-burning", "dust-and-smoke", "in-class"},
    "vent-space": {"falls", "lead-and-asbestos", "wet-and-moldy", "in-class"},
}


@pytest.mark.parametrize("id", CAUTIONS)
def test_a_lesson_warns_of_what_it_sends_people_to(id):
    assert set(lessons.lesson(id).cautions) >= CAUTIONS[id]


@pytest.mark.parametrize("id", lessons.pages())
def test_a_lesson_with_heat_steam_or_smoke_in_class_says_so(id):
    props = " ".join(notes(id).props)
    if re.search(r"\bhot\b|steam|smoke|\bfan\b|\bglass\b", props):
        assert "in-class" in lessons.lesson(id).cautions


@pytest.mark.parametrize("id", [each.id for each in lessons.lessons()])
def test_whoever_opens_a_roof_or_runs_a_blower_door_is_warned(id):
    lesson, props = lessons.lesson(id), " ".join(notes(id).props) if id in lessons.pages() else ""
    said = " ".join((lesson.question, lesson.takeaway, *lesson.objectives, props)).lower()
    if re.search(r"open a vault|open a roof|wet roof|roof is wet|blower", said):
        assert "lead-and-asbestos" in lesson.cautions


@pytest.mark.parametrize(
    ("id", "parts"),
    [
        ("falls", ["Tie off the ladder", "frosty roofs"]),
        ("lead-and-asbestos", ["no blower door", "vermiculite, loose asbestos or heavy mold"]),
        ("fuel-burning", ["put every burner back in service", "its flame"]),
        ("wires-and-lights", ["power off at the panel"]),
        ("loads-and-fire", ["on the room side must be covered", "drywall"]),
        ("dust-and-smoke", ["N95 or better", "eye protection"]),
    ],
)
def test_a_caution_says_what_to_do(id, parts):
    for part in parts:
        assert part in words.caution(id).text


def test_eyes_are_protected_not_covered():
    for path in (LESSONS / "guide").rglob("*.md"):
        assert "eye cover" not in path.read_text("utf-8")
    assert all("eye cover" not in each.text for each in words.cautions())


@pytest.mark.parametrize(
    ("name", "parts"),
    [
        ("winter-humidity", ["draft tested with all fans on", "carbon monoxide alarms", "Call us"]),
        ("before-you-close-in", ["Draft and carbon monoxide tested", "CO alarms in", "**before insulating**"]),
        ("wet-roof-order", ["much mold", "water near wires or lights", "ceiling or wood that sags", "electrician"]),
    ],
)
def test_a_handout_warns_where_it_sends_people(name, parts):
    for part in parts:
        assert part in handout(name)


def test_a_powered_fan_is_refused_for_its_own_reason():
    for seed in SEEDS:
        reply = next(each.reply for each in check("vent-space", 2, seed).choices if "powered fan" in each.text)
        assert "flue gas" in reply


# --- the belief behind a wrong answer ------------------------------------------


@pytest.mark.parametrize(
    ("id", "key", "belief"),
    [
        ("open-out-tight-in", "a", "counts-only-what-comes"),
        ("open-out-tight-in", "b", "counts-only-what-leaves"),
        ("the-film-that-changes", "d", "label-perm-is-the-perm"),
    ],
)
def test_a_prediction_names_the_belief_that_fits(id, key, belief):
    assert lessons.lesson(id).prediction.choice(key).belief == belief


@pytest.mark.parametrize(
    ("id", "place", "start", "belief", "seems"),
    [
        ("open-out-tight-in", 0, "10 times", "counts-only-what-comes", "What comes in is what you think of first."),
        ("open-out-tight-in", 0, "It gains less", "counts-only-what-leaves", "More ways out should mean less water."),
        ("your-readings", 0, "Look for a gap", "vapor-barrier-is-air-barrier", "One sheet often does both jobs"),
        ("where-it-gets-wet", 2, "The plane in the fill", "dew-point-is-a-place", "You can draw the line"),
    ],
)
def test_a_check_names_the_belief_that_fits(id, place, start, belief, seems):
    found = next(each for each in check(id, place).choices if each.text.startswith(start))
    assert found.belief == belief
    assert found.reply.startswith(f"Why it looked right: {seems}")


def test_house_air_in_the_roof_is_not_a_house_that_breathes():
    for seed in SEEDS:
        for each in kinds.draw("logger-cause", seed).choices:
            if each.text == "House air leaks in.":
                assert each.belief in ("", "usual-suspect")


def test_every_slip_is_offered_by_some_question():
    offered = {each.belief for lesson in lessons.lessons() for each in lesson.prediction.choices}
    for seed in range(30):
        drawn = [kinds.draw(kind, seed) for kind in kinds.KINDS]
        drawn += [each for id in lessons.pages() for each in questions.checks(id, seed)]
        offered |= {each.belief for question in drawn for each in question.choices}
    assert {each.id for each in beliefs.slips()} - offered <= set()


# --- the plan of a course ------------------------------------------------------


def test_the_index_says_how_many_lessons_a_meeting_has():
    counts = [sum(id != "start" for id in each.lessons) for each in pathways.pathway("nine-evenings").sessions]
    assert (min(counts), max(counts)) == (1, 2)
    index = nbformat.read(LESSONS / "00-start.ipynb", as_version=4)
    said = "\n".join(cell.source for cell in index.cells)
    assert "one or two lessons an evening, mostly in order" in said
    assert "Falls from roofs and ladders kill." in said


def test_a_pathway_is_given_in_hours_and_minutes():
    text = guide.pathways_page()
    for time in ("In all 4 hours.", "In all 18 hours in class and 6 h 45 min at home."):
        assert time in text
    assert "45 minutes of homework" in pathways.pathway("nine-evenings").who
    assert pathways.pathway("nine-evenings").homework == 45


def test_the_dampest_house_is_looked_for():
    assert "dampest house" in notes("open-out-tight-in").more


def test_the_words_of_the_trade_are_those_of_the_code():
    terms = {each.term: each for each in words.glossary()}
    assert "screen and louvers" in terms["net free area (NFA)"].meaning
    assert terms["net free area (NFA)"].avoid == '"gross area".'
    assert terms["stack effect"].meaning.startswith("In a heated house in winter")
    assert "class I or II dry and over 1 perm wet" in terms["variable film"].meaning
