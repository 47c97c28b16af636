"""``dryward check``: one roof, or a folder of them, judged in words."""

import argparse
import dataclasses
import json
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from dryward import building, weather
from dryward.building import codes
from dryward.building.job import DESIGNS, Job, Place, Room, load_job
from dryward.building.schema import entries
from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.language import called, joined, message
from dryward.report.check import Number
from dryward.report.many import failed, many, sweep
from dryward.units import grain_of_water, read_in, show
from dryward.verdict import STATES, UNKNOWN

#: Draws of the uncertain inputs when none are typed.
DRAWS = 24
#: Argument, entry of the room, unit system of a number without a unit.
_TYPED = (("humidity", "relative_humidity", "us"), ("room_temperature", "temperature", None))


def add_roof(parser: argparse.ArgumentParser) -> None:
    """Name the arguments that `check` and `report` share: a roof, its place and its room."""
    where = parser.add_mutually_exclusive_group()
    where.add_argument(
        "--place",
        metavar=message("cli.meta-name"),
        help=message("cli.place", places=joined("cli.name-after-name", weather.demos())),
    )
    where.add_argument("--epw", metavar=message("cli.meta-file"), help=message("cli.epw"))
    parser.add_argument("--zone", help=message("cli.zone"))
    parser.add_argument(
        "--edition",
        choices=tuple(map(str, codes.EDITIONS)),
        help=message("cli.edition"),
    )
    parser.add_argument("--humidity", help=message("cli.humidity").replace("%", "%%"))
    parser.add_argument("--room-temperature", help=message("cli.room-temperature"))
    parser.add_argument("--years", type=int, help=message("cli.years"))
    parser.add_argument("--design", choices=DESIGNS, help=message("cli.design"))
    parser.add_argument(
        "--spread",
        type=int,
        nargs="?",
        const=DRAWS,
        default=0,
        metavar=message("cli.meta-draws"),
        help=message("cli.spread", draws=str(DRAWS)),
    )
    parser.add_argument("--steady", action="store_true", help=message("cli.steady"))
    parser.add_argument(
        "--quick",
        action="store_true",
        help=message("cli.quick"),
    )


def _hidden(path: Path) -> bool:
    """Whether it lies in a folder such as ``.venv``, or is such a file."""
    return any(part.startswith(".") for part in path.parts)


def find(names: Sequence[str]) -> dict[str, Job | str]:
    """The jobs that are meant, by name, from files, folders of files, or presets; a sentence for a file that is no job.

    BadFile and UnknownName for what cannot be meant at all.
    """
    found: dict[str, Job | str] = {}
    for name in names:
        path = Path(name)
        if not name.strip() or (not path.exists() and not path.suffix and name not in building.presets()):
            raise UnknownName("file, folder or preset", name, building.presets())
        if path.is_dir():
            files = sorted(each for each in path.rglob("*.toml") if not _hidden(each.relative_to(path)))
            if not files:
                raise BadFile(message("cli.no-toml", folder=name))
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


def changed(job: Job, args: argparse.Namespace) -> Job:
    """The job with what was typed put in."""
    if args.steady and args.spread:
        raise OutOfRange(message("cli.spread-or-steady"))
    place = job.place
    if args.place:
        weather.demo_climate(args.place)
        place = Place("demo", args.place, zone=place.zone)
    elif args.epw:
        place = Place("file", str(Path(args.epw)), zone=place.zone)
    if args.zone:
        place = dataclasses.replace(place, zone=codes.zone(args.zone))
    room: dict[str, Any] = {}
    for name, key, system in _TYPED:
        if getattr(args, name):
            room[key] = entries(Room)[key].taken(getattr(args, name), system)
    # What is typed is held; a rule that has no such number would pass over it.
    if "relative_humidity" in room or (room and job.room.kind == "by outdoor temperature"):
        room["kind"] = "constant"
    job = dataclasses.replace(job, place=place, room=dataclasses.replace(job.room, **room))
    given = {name: getattr(args, name) for name in ("years", "design") if getattr(args, name) is not None}
    return dataclasses.replace(job, **given)


# --- the command -----------------------------------------------------------------


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    parser.add_argument("files", nargs="+", metavar=message("cli.meta-file"), help=message("cli.check-files"))
    add_roof(parser)
    parser.add_argument("--all-places", action="store_true", help=message("cli.check-all-places"))
    parser.add_argument("--workers", type=int, help=message("cli.check-workers"))
    parser.add_argument("--scheduler", metavar=message("cli.meta-address"), help=message("cli.check-scheduler"))
    parser.add_argument("--units", choices=("us", "si"), default="us", help=message("cli.check-units"))
    parser.add_argument("--json", action="store_true", help=message("cli.check-json"))


def run(args: argparse.Namespace) -> int:
    """Check, print, and return 0 when every roof is dry, 1 when one is damp or wet, 2 for bad input.

    A roof whose tightness was not tested must be dry with the assumed leak too.
    """
    found = find(args.files)
    roofs = {name: changed(job, args) for name, job in found.items() if not isinstance(job, str)}
    places = [Place("demo", id) for id in weather.demos()] if args.all_places else None
    work = sweep(roofs, places)
    results = []
    if work:
        tell = _progress(), args.spread, _parts(len(work))
        # Of several roofs one line each is printed: what decides is asked of one, or by a script.
        trials = not args.quick and (args.json or len(work) == 1)
        results = many(work, not args.steady, args.workers, args.scheduler, *tell, args.edition, trials)
    results += [failed(name, job) for name, job in found.items() if isinstance(job, str)]
    if args.json:
        print(json.dumps(results if len(results) > 1 else results[0], indent=1, ensure_ascii=False))
    else:
        for result in results:
            _print(result, args.units, brief=len(results) > 1)
    if any("error" in result for result in results):
        return 2
    return 0 if all(result["holds"] for result in results) else 1


def _progress() -> Callable[[int, int, Any], None] | None:
    if not sys.stderr.isatty():
        return None

    def tell(done: int, total: int, result: Any) -> None:
        if total > 1:
            _counted(message("cli.done-of", done=str(done), total=str(total)), done < total)

    return tell


def _counted(words: str, more: bool) -> None:
    """A line that the next one takes the place of, as long as there is more to come."""
    print("\r" + words, end="" if more else "\n", file=sys.stderr, flush=True)


def _parts(jobs: int) -> Callable[[int, int], None] | None:
    if jobs != 1 or not sys.stderr.isatty():
        return None

    def tell(done: int, total: int) -> None:
        _counted(message("cli.done-of-percent", done=str(done), total=str(total)), done < total)

    return tell


def _print(result: dict[str, Any], units: str, brief: bool) -> None:
    if "error" in result:
        print(message("cli.refused", why=result["error"]), file=sys.stderr)
        return
    if brief:
        wide = max(len(message("verdict.state", state=state)) for state in (*STATES, UNKNOWN))
        told = message("cli.one-of-many", name=result["name"], headline=read_in(result["headline"], units))
        print(f"{message('verdict.state', state=result['state']):<{wide}} {told}")
        for warning in result["warnings"]:
            print(f"{'':<{wide}} {warning}")
        return
    from dryward.report.document import MARKS, amount, legend, newest_edition

    print(message("cli.roof-and-place", roof=called(result["assembly"]), place=result["place"]))
    for warning in result["warnings"]:
        print(warning)
    print(f"{read_in(result['headline'], units)}\n{result['small']}\n\n{legend()}")
    for each in result["checks"]:
        print(message("cli.check-line", mark=MARKS[each["answer"]], asked=each["asked"], said=each["said"]))
        for line in (each["what"], *each["lines"], each["why"], each["change"], each["matters"]):
            if line:
                print(f"    {read_in(line, units)}")
        for number in each["numbers"]:
            shown = amount(Number(**number), units)
            print(f"    {message('cli.number-of', label=number['label'], amount=shown)}")
        if each["limits"]:
            print(f"    {message('cli.limits', limits=read_in(each['limits'], units))}")
        if each["source"] and each["id"].startswith(("code-", "vents")):
            print(f"    {message('cli.rule', source=each['source'])}")
    leak = bool(result["with_assumed_leak"])
    limit = result["room_humidity_limit"]
    if limit:
        shown = message("cli.none-tried")
        if limit["humidity"] is not None:
            shown = show(limit["humidity"], "relative humidity", "si")
        print(message("cli.highest-humidity", leak=leak, humidity=shown))
    for design, state in result["designs"].items():
        print(message("cli.design-year", leak=leak, design=called(design), state=message("verdict.state", state=state)))
    for note in (*result["notes"], grain_of_water()):
        if note not in result["warnings"]:
            print(note)
    print(message("cli.code-rows", edition=newest_edition()))
    print(message("cli.as-adopted"))
