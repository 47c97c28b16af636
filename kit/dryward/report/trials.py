"""What the hourly year says when something else were so: other inputs, other design years, other rooms.

Every trial is the year of the job itself with one thing changed, run and
judged as the job was.
"""

import dataclasses

from dryward import verdict, weather
from dryward.building.job import DESIGNS, Tightness
from dryward.report.check import Limit
from dryward.report.setting import setting
from dryward.report.uncertain import ranked, things, value_of
from dryward.report.year_checks import options
from dryward.verdict import DRY
from dryward.weather import Air

#: Room humidities that are tried for the limit [whole %]; drier no house is held, damper no window stands.
LOWEST, HIGHEST = 15, 70


def judged(cases, progress=None):
    """The verdict of each of some years.

    Parameters
    ----------
    cases : sequence of (Setting, Assembly, dict)
        The assembly in it, and keywords of `hourly.simulate`.
    progress : function, optional
        Called with (years' runs done, in all); False ends it.

    Returns
    -------
    list of Verdict

    Raises
    ------
    Stopped
        When it was ended.
    NotConverged
        As in `hourly.simulate`.
    """
    from dryward.physics import hourly

    done = [0]

    def tell(place, found):
        done[0] += 1
        return progress(done[0], len(cases)) if progress else None

    work = [(built, here.hours, here.room, keys) for here, built, keys in cases]
    return hourly.batch(work, verdict.of_year, tell)


def deciding(here, found, progress=None):
    """What decides: each uncertain input put to both ends of its range alone.

    Parameters
    ----------
    here : Setting
    found : Verdict
        Of the job's own year.
    progress : function, optional
        As in `judged`.

    Returns
    -------
    tuple of Decides
        The input that moves the state most first, or what the verdict hangs on.
    """
    from dryward.physics import spread

    built, keys = here.job.assembly, options(here)
    inputs = things(built, keys["leak"])
    cases = []
    for each in inputs:
        cases += [(here, *spread.drawn(built, keys, [each], [end])) for end in (each.low, each.high)]
    ends = judged(cases, progress)
    return ranked(inputs, list(zip(ends[::2], ends[1::2], strict=True)), found)


def designs(here, found, progress=None):
    """The verdict of each design year.

    Parameters
    ----------
    here : Setting
    found : Verdict
        Of the job's own.
    progress : function, optional
        As in `judged`.

    Returns
    -------
    tuple of (str, Verdict)
    """
    job = here.job
    others = [each for each in DESIGNS if each != job.design]
    places = [setting(dataclasses.replace(job, design=each)) for each in others]
    made = judged([(place, job.assembly, options(place)) for place in places], progress)
    known = {job.design: found, **dict(zip(others, made, strict=True))}
    return tuple((each, known[each]) for each in DESIGNS)


#: Tightness that is tried where none was tested [air changes an hour at 50 Pa]; an assumption.
ASSUMED = 3.0


def with_leak(here):
    """The setting with a leak: that of a job whose tightness was tested, else one of `ASSUMED`.

    Parameters
    ----------
    here : Setting

    Returns
    -------
    Setting
    """
    if here.job.tightness is not None:
        return here
    return dataclasses.replace(here, job=dataclasses.replace(here.job, tightness=Tightness(ASSUMED)))


def assumed_leak(here, progress=None):
    """The verdict with a leak of `ASSUMED`, for a job whose tightness was not tested; else None.

    Parameters
    ----------
    here : Setting
    progress : function, optional
        As in `judged`.

    Returns
    -------
    Verdict or None
    """
    if here.job.tightness is not None:
        return None
    leaky = with_leak(here)
    return judged([(leaky, leaky.job.assembly, options(leaky))], progress)[0]


def untested(found, leaky, at):
    """What an untested leak decides: the verdict without one, and with one of `ASSUMED`.

    Parameters
    ----------
    found, leaky : Verdict
    at : Verdict
        The one of them whose worst quantity is told.

    Returns
    -------
    Decides
    """
    low, high = (value_of(each, at.worst) for each in (found, leaky))
    return verdict.Decides("", "leak", low, high, (found.state, leaky.state))


def humidity_limit(here, progress=None):
    """The highest room humidity of the coldest month at which the year stays dry, to one point.

    Parameters
    ----------
    here : Setting
        With its leak, or the one of `with_leak`.
    progress : function, optional
        As in `judged`.

    Returns
    -------
    Limit
        Both sides of it were run.
    """
    tried = {}

    def run(points):
        new = [each for each in points if each not in tried]
        rooms = [dataclasses.replace(here, room=room_at(here, each / 100)) for each in new]
        states = [each.state for each in judged([(room, here.job.assembly, options(room)) for room in rooms])]
        tried.update(zip(new, states, strict=True))
        if progress and progress(len(tried), 10) is False:
            from dryward.physics.hourly import Stopped

            raise Stopped("The trials were stopped.")

    run((LOWEST, HIGHEST))
    low, high = LOWEST, HIGHEST
    ends = LOWEST / 100, HIGHEST / 100
    if tried[low] != DRY:
        return Limit(None, *ends, tried[low])
    if tried[high] == DRY:
        return Limit(high / 100, *ends, "")
    while high - low > 1:  # two runs at a time, for two cores
        step = (high - low) / 3
        points = sorted({min(max(round(low + part * step), low + 1), high - 1) for part in (1, 2)})
        run(points)
        for each in points:
            if tried[each] == DRY:
                low = each
            else:
                high = each
                break
    return Limit(low / 100, *ends, tried[high])


def room_at(here, humidity):
    """The rule of a job's rooms moved so that the coldest month has a humidity.

    Parameters
    ----------
    here : Setting
    humidity : float
        [-]

    Returns
    -------
    indoor rule
        A house held at one air in winter keeps its summer; any other rule is
        moved as a whole.
    """
    room = here.job.room
    if room.kind != "constant":
        return weather.indoor.damper(here.room, humidity - here.winter_room.relative_humidity)
    damp = here.job.design == "damp house"
    summer = min(room.summer_relative_humidity + damp * weather.indoor.DAMPER, 1.0)
    return weather.indoor.heated_and_cooled(Air(room.temperature, humidity), Air(room.summer_temperature, summer))
