"""``dryward bench``: how fast the kit is, beside its peers, in one run.

Each file of this folder that has ``measurements()`` is a group; it is found
by itself.  Peers are timed in the same run, turn by turn with the kit, so
that the ratios mean something on any machine.
"""

import dataclasses
import importlib
import json
import pkgutil
import platform

from dryward import __version__
from dryward.checks import OutOfRange, UnknownName
from dryward.cli import front_page
from dryward.cli.bench import readme


def groups():
    """Names of the groups of measurements, in the order of the table."""
    found = [module.name for module in pkgutil.iter_modules(__path__)]
    named = [name for name in _ORDER if name in found]
    return (*named, *(name for name in found if name not in (*_ORDER, *_TOOLS)))


_TOOLS = ("timing", "readme")
_ORDER = ("moist_air", "steady", "hourly", "pictures", "start")


def add(parser):
    """Name the arguments of the command."""
    parser.add_argument("groups", nargs="*", metavar="GROUP", help=f"of {', '.join(groups())}; all if none")
    parser.add_argument("--json", action="store_true", help="print the measurements as JSON")
    parser.add_argument("--readme", action="store_true", help="write the table into the README of this checkout")


def run(args):
    """Measure, print; 1 when a target is missed."""
    for name in args.groups:
        if name not in groups():
            raise UnknownName("group of measurements", name, groups())
    if args.readme and args.groups:
        raise OutOfRange("--readme writes the table of all groups; leave the groups out.")
    found = []
    for name in args.groups or groups():
        for each in importlib.import_module(f"{__name__}.{name}").measurements():
            found.append(each)
            if not args.json:
                print(each, flush=True)
    if args.json:
        machine = {"python": platform.python_version(), "system": platform.system(), "dryward": __version__}
        rows = [{**dataclasses.asdict(each), "met": each.met} for each in found]
        print(json.dumps({"machine": machine, "measurements": rows}, indent=1))
    missed = [each for each in found if each.met is False]
    if args.readme:
        print(f"The table stands in {front_page.write('speed', readme.table(found))}.")
    if not args.json:
        print(f"{len(found)} measurements; {len(missed) or 'no'} targets missed.")
    return 1 if missed else 0
