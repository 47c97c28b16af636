"""Practical tasks: set the sliders so that ...; physics says whether it is done.

There are several right ways.  A task names its start, what may not be
touched, and how many controls may be changed.
"""

from dataclasses import dataclass
from math import isclose

from dryward import air
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import steady
from dryward.physics.airleak import LONG_SHARE, brought, orifice_flow
from dryward.teaching import words
from dryward.teaching.questions.by_lesson.how_fast_perms import in_a_row
from dryward.teaching.questions.by_lesson.winter_house import EDGE, fogs_at
from dryward.teaching.questions.roof import FILM, roof
from dryward.units import DAY, from_si, to_si
from dryward.verdict import DRY, criterion, of_steady
from dryward.verdict.words import sentence
from dryward.weather import Air
from dryward.weather.indoor import steady_humidity


@dataclass(frozen=True)
class Outcome:
    """What came of a try at a task.

    Attributes
    ----------
    solved : bool
    words : str
        One sentence with the number.
    value : float
        What was worked out, SI.
    """

    solved: bool
    words: str
    value: float


@dataclass(frozen=True)
class Task:
    """One practical task.

    Attributes
    ----------
    id, lesson : str
    text : str
        What to do; numbers with units stand in braces.
    start : dict
        Control name -> value, in SI.
    may_change : tuple of str
        Controls that may be moved.
    most_changes : int
    one_way : dict
        One solution, for the instructor and the tests.
    """

    id: str
    lesson: str
    text: str
    start: dict
    may_change: tuple
    most_changes: int
    one_way: dict


def _si(**values):
    """Control values given with their units, in SI."""
    return {name: to_si(float(value), unit) for name, (value, unit) in values.items()}


_WINTER = _si(T_in=(70, "degF"), RH_in=(40, "%"), T_out=(20, "degF"), RH_out=(80, "%"))
_JULY = _si(T_in=(70, "degF"), RH_in=(50, "%"), T_out=(85, "degF"), RH_out=(75, "%"))


def _perms(**values):
    return {name: to_si(float(value), "perm") for name, value in values.items()}


TASKS = (
    Task(
        "dry-the-deck",
        "open-out-tight-in",
        "This roof has {1.5 perm} outside and {3 perm} inside, and it is wet. Set the sliders so that it is dry at "
        "{20 degF}. Change two things at most. The weather stays.",
        {**_WINTER, **_perms(M_in=3, M_out=1.5)},
        ("M_in", "M_out", "RH_in"),
        2,
        _perms(M_in=0.1),
    ),
    Task(
        "january-air",
        "winter-house",
        "A family gives off {21 pint/day} at {10 degF} outside, and the edges of the windows drip. Get them dry with "
        "no more than {100 cfm} of fresh air. Change one thing.",
        {
            **_si(T_in=(70, "degF"), T_out=(10, "degF"), RH_out=(80, "%")),
            **_si(Water=(21, "pint/day"), Fresh_air=(25, "cfm")),
        },
        ("Fresh_air", "Water"),
        1,
        _si(Fresh_air=(60, "cfm")),
    ),
    Task(
        "july-film",
        "july",
        "It is {85 degF} and {75 %} outside. The inner film has {0.06 perm} and its outer face is wet. Get the roof "
        "dry. Change two things at most. The weather stays.",
        {**_JULY, **_perms(M_in=0.06)},
        ("M_in", "T_in"),
        2,
        {**_perms(M_in=10), **_si(T_in=(78, "degF"))},
    ),
    Task(
        "warm-film",
        "inside-the-film",
        "It is {0 degF} outside, {70 degF} and {50 %} inside. There is {22 R} inside the teaching film, and the roof "
        "is wet. Get the film to {1 perm} or tighter, and the roof dry. Change two things at most.",
        {
            **_si(T_in=(70, "degF"), RH_in=(50, "%"), T_out=(0, "degF"), RH_out=(80, "%")),
            **_si(R_in=(22, "R")),
        },
        ("R_in", "RH_in"),
        2,
        _si(R_in=(5, "R")),
    ),
    Task(
        "within-the-reserve",
        "the-hole-and-the-ceiling",
        "A hole of {1 in2} at 1 Pa in {32 ft2} of painted drywall with no film. A roof can be expected to give back "
        "{250 g/m2} in summer, here {0.743 kg}. Bring what hole and ceiling leave in the winter below that. Change two "
        "things at most. The room stays.",
        {**_WINTER, **_perms(M_in=in_a_row(40, 7)), **_si(Hole=(1, "in2")), "dP": 1.0},
        ("M_in", "Hole", "dP"),
        2,
        {**_perms(M_in=0.2), **_si(Hole=(0.1, "in2"))},
    ),
)


def tasks(lesson=None):
    """The tasks, or those of one lesson.

    Parameters
    ----------
    lesson : str, optional

    Returns
    -------
    tuple of Task

    Examples
    --------
    >>> [each.id for each in tasks("july")]
    ['july-film']
    """
    return tuple(each for each in TASKS if lesson in (None, each.lesson))


def task(id):
    """The task of that id.

    Parameters
    ----------
    id : str

    Returns
    -------
    Task

    Raises
    ------
    UnknownName
        When there is none.

    Examples
    --------
    >>> task("july-film").lesson
    'july'
    """
    for each in TASKS:
        if each.id == id:
            return each
    raise UnknownName("practical task", id, [each.id for each in TASKS])


def judge(id, values, unit_system="us", labels=None):
    """Whether the sliders as they stand solve a task.

    Parameters
    ----------
    id : str
    values : dict
        Control name -> value, in SI; controls left out stand at their start.
    unit_system : {"us", "si"}
    labels : dict, optional
        Control name -> what the page calls it; otherwise the name.

    Returns
    -------
    Outcome

    Raises
    ------
    UnknownName
        For an unknown task or control.
    OutOfRange
        For a value that physics cannot work with.

    Examples
    --------
    >>> judge("july-film", {}).solved
    False
    """
    what = task(id)
    for name in values:
        if name not in what.start:
            raise UnknownName("control in this task", name, what.start)
    now = {**what.start, **values}
    moved = [name for name in now if not isclose(now[name], what.start[name], rel_tol=1e-6, abs_tol=1e-15)]
    kept = [name for name in moved if name not in what.may_change]
    if kept:
        label = (labels or {}).get(kept[0], kept[0])
        return Outcome(False, f"{label} stays as it is in this task; set it back.", float("nan"))
    if len(moved) > what.most_changes:
        return Outcome(False, f"You changed {len(moved)} things; {what.most_changes} at most.", float("nan"))
    return _JUDGES[id](now, _Say(unit_system))


@dataclass(frozen=True)
class _Say:
    """Numbers and verdicts in the reader's units."""

    unit_system: str

    def __call__(self, value, unit):
        return words.number(from_si(value, unit), unit, self.unit_system)

    def verdict(self, found):
        return sentence(found, self.unit_system)


def _airs(now):
    return Air(now["T_in"], now["RH_in"]), Air(now["T_out"], now["RH_out"])


#: From here on an inner film counts as none at all [perm].
NO_FILM = 1000.0


def _vault(now, outer):
    """The steady state of the vault with those perms."""
    inner = from_si(now["M_in"], "perm")
    return steady.profile(roof(None if inner >= 0.999 * NO_FILM else inner, outer), *_airs(now))


def _dry(profile, say):
    """Done when the page's own verdict is dry."""
    found = of_steady(profile)
    return Outcome(found.state == DRY, say.verdict(found), profile.gain)


def _deck(now, say):
    return _dry(_vault(now, from_si(now["M_out"], "perm")), say)


def _january(now, say):
    if now["Fresh_air"] <= 0:
        raise OutOfRange(f"Fresh air is {now['Fresh_air']:.6g} m³/s; it must be above 0 m³/s.")
    found = steady_humidity(now["Water"], now["Fresh_air"], Air(now["T_out"], now["RH_out"]), now["T_in"])
    few = now["Fresh_air"] <= to_si(100, "cfm") * (1 + 1e-9)
    edge = float(fogs_at(EDGE, now["T_out"], now["T_in"]))
    return Outcome(
        criterion("window-edge").state(found / edge) == DRY and few,
        f"The room settles at {100 * min(found, 1.0):.0f} % with {say(now['Fresh_air'], 'cfm')} of fresh air; the edge "
        f"of the pane fogs from {100 * edge:.0f} % on.",
        found,
    )


def _july(now, say):
    return _dry(_vault(now, "open membrane"), say)


def _film(now, say):
    profile = steady.profile(roof("variable", "open membrane", from_si(now["R_in"], "R")), *_airs(now))
    found, judged = profile.permeance[FILM], of_steady(profile)
    tight = found <= to_si(1.0, "perm") * (1 + 1e-9)
    told = f"The film stands at {say(found, 'perm')}. {say.verdict(judged)}"
    return Outcome(tight and judged.state == DRY, told, found)


def _hole(now, say):
    indoor, outdoor = _airs(now)
    area, winter, limit = to_si(32, "ft2"), 150 * DAY, criterion("winter-water")
    leak = brought(orifice_flow(now["dP"], now["Hole"]), indoor, outdoor.temperature, LONG_SHARE)
    drive = max(indoor.vapor_pressure - air.saturation_vapor_pressure(outdoor.temperature), 0.0)
    stays, through = leak.stays * winter, now["M_in"] * area * drive * winter
    found = (stays + through) / area
    return Outcome(
        found < limit.caution,
        f"About {say(stays, 'kg')} stay from the hole, and {say(through, 'kg')} come through the ceiling. Together "
        f"that is {say(found, 'g/m2')}: {limit.state(found)}.",
        found,
    )


_JUDGES = {
    "dry-the-deck": _deck,
    "january-air": _january,
    "july-film": _july,
    "warm-film": _film,
    "within-the-reserve": _hole,
}
