"""``dryward check``: one roof, or a folder of them, judged in words."""

import json
import sys

from dryward import weather
from dryward.building.job import Place
from dryward.cli import jobs
from dryward.report.check import Number
from dryward.report.many import failed, many, sweep
from dryward.units import GRAIN_OF_WATER
from dryward.verdict import UNKNOWN


def add(parser):
    """Name the arguments of the command."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="an assembly or job file, a folder, or a preset")
    jobs.add(parser)
    parser.add_argument("--all-places", action="store_true", help="check each roof in all invented places")
    parser.add_argument("--workers", type=int, help="processes to use; otherwise one for each core")
    parser.add_argument("--scheduler", metavar="ADDRESS", help="a running Dask scheduler to use instead")
    parser.add_argument("--units", choices=("us", "si"), default="us", help="units of the printed numbers")
    parser.add_argument("--json", action="store_true", help="print everything that was found as JSON, SI units")


def run(args):
    """Check, print, and return 0 when every roof is dry, 1 when one is damp or wet, 2 for bad input.

    A roof whose tightness was not tested must be dry with the assumed leak too.
    """
    found = jobs.find(args.files)
    roofs = {name: jobs.changed(job, args) for name, job in found.items() if not isinstance(job, str)}
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


def _progress():
    if not sys.stderr.isatty():
        return None

    def tell(done, total, result):
        if total > 1:
            print(f"\r{done} of {total}", end="" if done < total else "\n", file=sys.stderr, flush=True)

    return tell


def _parts(jobs):
    if jobs != 1 or not sys.stderr.isatty():
        return None

    def tell(done, total):
        print(f"\r{done} of {total} %", end="" if done < total else "\n", file=sys.stderr, flush=True)

    return tell


def _print(result, units, brief):
    if "error" in result:
        print(f"dryward: {result['error']}", file=sys.stderr)
        return
    if brief:
        print(f"{result['state']:{len(UNKNOWN)}} {result['name']}: {result['headline']}")
        for warning in result["warnings"]:
            print(f"{'':{len(UNKNOWN)}} {warning}")
        return
    from dryward.report.document import EDITION, LEGEND, MARKS, amount

    print(f"{result['assembly']}, {result['place']}")
    for warning in result["warnings"]:
        print(warning)
    print(f"{result['headline']}\n{result['small']}\n\n{LEGEND}")
    for each in result["checks"]:
        print(f"{MARKS[each['answer']]} {each['asked']} {each['said']}.")
        for line in (each["what"], *each["lines"], each["why"], each["change"], each["matters"]):
            if line:
                print(f"    {line}")
        for number in each["numbers"]:
            print(f"    {number['label']}: {amount(Number(**number), units)}")
        if each["limits"]:
            print(f"    Limits: {each['limits']}")
        if each["source"] and each["id"].startswith(("code-", "vents")):
            print(f"    Rule: {each['source']}.")
    leak = " with the assumed leak" if result["with_assumed_leak"] else ""
    limit = result["room_humidity_limit"]
    if limit:
        shown = "none that was tried" if limit["humidity"] is None else f"{limit['humidity'] * 100:.0f} %"
        print(f"Highest room humidity in winter at which the hourly year{leak} is dry: {shown}.")
    for design, state in result["designs"].items():
        print(f"Design year, {design}{leak}: {state}.")
    for note in (*result["notes"], GRAIN_OF_WATER):
        if note not in result["warnings"]:
            print(note)
    print(f"Code rows are {EDITION}.")
    print("As adopted locally; the building official decides.")
