"""Kinds about wood and readings: storage, the cause behind a logger, the pin meter."""

from dataclasses import replace
from functools import cache

from dryward.building.library import material
from dryward.teaching.questions.by_lesson.hour_by_hour import BOARDS, board_name
from dryward.units import from_si, to_si
from dryward.weather import loggers


def storage(draw):
    """Water that a board takes up for a change of MC."""
    name, board, inches = draw.pick(BOARDS[0], BOARDS)
    start = draw.pick(12, (8, 10, 12))
    end = draw.pick(20, (16, 18, 20, 24))
    rate = draw.pick(10.0, (2.0, 5.0, 10.0))
    draw.note(board=name, start=start, end=end, rate=rate)
    thickness = to_si(inches, "in")
    dry = material(board).density * thickness

    def grams(change, mass=dry):
        return from_si(mass * change, "g/m2")

    found = grams((end - start) / 100)
    wet = grams(end / (100 - end) - start / (100 - start))
    say = draw.say
    draw.because(
        f"Dry weight times {end - start} %: {say(found, 'g/m2')}. At {say(rate, 'g/m2/day')} that takes "
        f"{found / rate:.0f} days."
    )
    weight = say(grams(1), "g/m2")
    if draw.unit_system == "us":
        weight = f"{say(from_si(dry, 'lb/ft2'), 'lb/ft2')} ({weight})"
    return draw.number(
        f"{board_name(draw, name, inches)} weighs {weight} dry. It goes from {start} % to {end} % MC. "
        "How much water does it take up?",
        found,
        "g/m2",
        0.1 * found,
        (grams((end - start) / 100, thickness * 1000), "forgets-density"),
        (wet, "percent-of-wet-weight"),
        (grams(end / 100), "months-stand-alone", f"It did not start dry. Only the {end - start} % in between is new."),
    )


_CAUSES = {
    "rain leak": ("rain-leak", "Rain gets in.", "wet-roof-needs-vents"),
    "air leak": ("air-leak", "House air leaks in.", "one-path-does-it-all"),
    "built-in water": ("built-in-water", "Water was built into the wood.", "trust-the-trend-later"),
    "indoor humidity": ("indoor-humidity", "The house is too humid.", "treats-the-sign"),
}


@cache
def _readings(name):
    with loggers.sample(f"cause-{name}") as path:
        return loggers.read(path)


def _part(record, first, last):
    """Some rows of a record."""
    rows = {
        name: None if getattr(record, name) is None else getattr(record, name)[first:last]
        for name in ("time", "temperature", "vapor_pressure", "moisture_content", "rain")
    }
    return replace(record, **rows)


def logger_cause(draw):
    """The cause behind three weeks of readings."""
    cause = draw.pick("air leak", tuple(_CAUSES))
    first = draw.pick(0, range(0, 168, 12))
    whole = _readings(_CAUSES[cause][0])
    part = replace(whole, records=tuple(_part(each, first, first + 504) for each in whole.records))
    found = loggers.diagnose(part)
    if found.cause != cause or not found.numbers["wet spells"] >= 1:  # without a spell of rain no share of them
        return None
    draw.note(cause=cause, first=first)
    n = found.numbers
    say = draw.say
    change = n["wood at the end against the start"]
    draw.because(found.evidence[0])
    spells, share = n["wet spells"], n["wet spells that wet the wood"]
    return draw.words(
        "Three weeks of readings in a roof. "
        f"Vapor a tenth or more above outdoors: {100 * n['share above outdoors']:.0f} % of hours. "
        f"Well above room and outdoors: {100 * n['share above both']:.0f} %. "
        f"Moves with the room: {n['changes with the room']:.2f} (1 is perfect). "
        f"Moves with deck warmth: {n['changes with the sun']:.2f}. "
        f"Room above outdoors: {say(n['room above outdoors'], 'Pa')}. "
        f"Wetter after rain: {spells * share:.0f} of {spells:.0f} spells. "
        f"Wood: {abs(change):.1f} points of MC {'drier' if change < 0 else 'wetter'}. "
        "What is the cause?",
        _CAUSES[cause][1],
        *(
            (text, belief, f"The readings say otherwise. {found.evidence[0]}")
            for _, text, belief in (_CAUSES[other] for other in _CAUSES if other != cause)
        ),
    )


def meter(draw):
    """A pin meter in cold wood."""
    reading = draw.pick(15, range(10, 21))
    cold = draw.pick(20, (0, 10, 20, 30, 40))
    draw.note(reading=reading, temperature=cold)
    found = float(loggers.moisture_content(float(reading), to_si(float(cold), "degF")))
    say = draw.say
    draw.because(f"Cold wood conducts less, so the meter reads low. At {say(cold, 'degF')} it is about {found:.0f} %.")
    return draw.number(
        f"A pin meter set for room temperature reads {reading} % in framing lumber at {say(cold, 'degF')}. "
        "What is the MC?",
        found,
        "%",
        1.0,
        (reading, "meter-reads-true"),
        (2 * reading - found, "correction-wrong-way"),
        tail=" MC",
    )
