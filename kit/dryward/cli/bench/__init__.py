"""``dryward bench``: how fast the kit is, beside its peers, in one run.

Peers are timed in the same run, turn by turn with the kit, so
that the ratios mean something on any machine.
"""

import argparse
import dataclasses
import json
import platform
from collections.abc import Callable, Iterator

from dryward import __version__
from dryward.checks import OutOfRange, UnknownName
from dryward.cli import front_page
from dryward.cli.bench import physics, screens
from dryward.cli.bench.timing import Measurement, table
from dryward.language import joined, message

#: The groups of measurements, in the order of the table.
GROUPS: dict[str, Callable[[], Iterator[Measurement]]] = {
    "moist_air": physics.moist_air,
    "steady": physics.steady_states,
    "hourly": physics.hourly_years,
    "pictures": screens.pictures,
    "start": screens.start,
}


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    groups = joined("cli.name-after-name", list(GROUPS))
    parser.add_argument(
        "groups", nargs="*", metavar=message("cli.meta-group"), help=message("cli.bench-groups", groups=groups)
    )
    parser.add_argument("--json", action="store_true", help=message("cli.bench-json"))
    parser.add_argument("--readme", action="store_true", help=message("cli.bench-readme"))


def run(args: argparse.Namespace) -> int:
    """Measure, print; 1 when a target is missed."""
    for name in args.groups:
        if name not in GROUPS:
            raise UnknownName("group of measurements", name, GROUPS)
    if args.readme and args.groups:
        raise OutOfRange(message("cli.bench-all-groups"))
    found = []
    for name in args.groups or GROUPS:
        for each in GROUPS[name]():
            found.append(each)
            if not args.json:
                print(each, flush=True)
    if args.json:
        machine = {"python": platform.python_version(), "system": platform.system(), "dryward": __version__}
        rows = [{**dataclasses.asdict(each), "met": each.met} for each in found]
        print(json.dumps({"machine": machine, "measurements": rows}, indent=1))
    missed = [each for each in found if each.met is False]
    if args.readme:
        print(message("cli.table-stands", file=str(front_page.write("speed", table(found)))))
    if not args.json:
        print(message("cli.bench-done", count=str(len(found)), missed=len(missed)))
    return 1 if missed else 0
