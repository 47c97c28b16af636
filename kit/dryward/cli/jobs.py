"""Arguments that `check` and `report` share: a roof, its place and its room."""

import dataclasses
from pathlib import Path

from dryward import building, units, weather
from dryward.building import codes
from dryward.building.job import DESIGNS, ROOM_TEMPERATURES, Job, Place, load_job
from dryward.checks import BadFile, OutOfRange, UnknownName, within

#: Draws of the uncertain inputs when none are typed.
DRAWS = 24
_TYPED = (
    ("humidity", "relative humidity", "%", "room humidity in the heating season, such as 40 or 40%%"),
    ("room_temperature", "temperature", None, "room temperature in the heating season, such as 70F or 21C"),
)


def add(parser):
    """Name the arguments."""
    where = parser.add_mutually_exclusive_group()
    where.add_argument("--place", metavar="NAME", help=f"an invented place: {', '.join(weather.demos())}")
    where.add_argument("--epw", metavar="FILE", help="a weather file")
    parser.add_argument("--zone", help="climate zone of the code, such as 6 or 4C")
    parser.add_argument(
        "--edition",
        choices=tuple(map(str, codes.EDITIONS)),
        help="of the codes; otherwise the newest whose text was read",
    )
    for name, _, _, words in _TYPED:
        parser.add_argument(f"--{name.replace('_', '-')}", help=words)
    parser.add_argument(
        "--years", type=int, help="most years of the hourly run, 1 to 10; it ends when the year repeats"
    )
    parser.add_argument("--design", choices=DESIGNS, help="the year it is designed for; otherwise that of the file")
    parser.add_argument(
        "--spread",
        type=int,
        nargs="?",
        const=DRAWS,
        default=0,
        metavar="DRAWS",
        help=f"bands of the hourly years from so many draws of the uncertain inputs ({DRAWS} when no number is given)",
    )
    parser.add_argument("--steady", action="store_true", help="leave the hourly years out")
    parser.add_argument(
        "--quick",
        action="store_true",
        help="the verdict alone: no uncertain inputs, other design years or room humidities are tried",
    )


def _hidden(path):
    """Whether it lies in a folder such as ``.venv``, or is such a file."""
    return any(part.startswith(".") for part in path.parts)


def find(names):
    """The jobs that are meant: files, folders of files, or presets.

    Parameters
    ----------
    names : sequence of str

    Returns
    -------
    dict
        Name -> Job, or the sentence that says why there is none.

    Raises
    ------
    BadFile
        When a file cannot be read.
    UnknownName
        When a single name is neither file, folder nor preset.
    """
    found = {}
    for name in names:
        path = Path(name)
        if not name.strip() or (not path.exists() and not path.suffix and name not in building.presets()):
            raise UnknownName("file, folder or preset", name, building.presets())
        if path.is_dir():
            files = sorted(each for each in path.rglob("*.toml") if not _hidden(each.relative_to(path)))
            if not files:
                raise BadFile(f"{name}: there is no .toml file in this folder.")
            for file in files:
                try:
                    found[str(file.relative_to(path.parent))] = load_job(file)[0]
                except BadFile as error:
                    found[str(file.relative_to(path.parent))] = str(error)
        elif not path.exists() and name in building.presets():
            found[name] = Job(building.preset(name))
        else:
            found[name] = load_job(path)[0]
    return found


def changed(job, args):
    """The job with what was typed put in.

    Parameters
    ----------
    job : Job
    args : argparse.Namespace

    Returns
    -------
    Job

    Raises
    ------
    NotUnderstood, OutOfRange, UnknownName
        For what cannot be meant.
    """
    if args.steady and args.spread:
        raise OutOfRange("The spread is of the hourly years: leave out --steady or --spread.")
    place = job.place
    if args.place:
        weather.demo_climate(args.place)
        place = Place("demo", args.place, zone=place.zone)
    elif args.epw:
        place = Place("file", str(Path(args.epw)), zone=place.zone)
    if args.zone:
        place = dataclasses.replace(place, zone=codes.zone(args.zone))
    room = {}
    for name, quantity, default, _ in _TYPED:
        if getattr(args, name):
            key = "relative_humidity" if name == "humidity" else "temperature"
            room[key] = units.quantity(getattr(args, name), quantity, default)
    # What is typed is held; a rule that has no such number would pass over it.
    if "relative_humidity" in room or (room and job.room.kind == "by outdoor temperature"):
        room["kind"] = "constant"
    if (args.room_temperature or "").strip().upper().endswith("F"):  # refused in the unit that was typed
        typed, low, high = (units.from_si(each, "degF") for each in (room["temperature"], *ROOM_TEMPERATURES))
        within("Room temperature", typed, low, high, "°F")
    job = dataclasses.replace(job, place=place, room=dataclasses.replace(job.room, **room))
    given = {name: getattr(args, name) for name in ("years", "design") if getattr(args, name) is not None}
    return dataclasses.replace(job, **given)
