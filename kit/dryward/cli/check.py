"""``dryward check``: one roof, or a folder of them, judged in words."""

import json
import sys

from dryward import weather
from dryward.building.job import Place
from dryward.cli import jobs
from dryward.report.amounts import GRAIN
from dryward.report.findings import Number
from dryward.report.many import many, sweep


def add(parser):
    """Name the arguments of the command."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="an assembly or job file, a folder, or a preset")
    jobs.add(parser)
    parser.add_argument("--all-places", action="store_true", help="check each roof in all invented places")
    parser.add_argument("--workers", type=int, help="processes to use; otherwise one for each core")
    parser.add_argument("--scheduler", metavar="ADDRESS", help="a running Dask scheduler to use instead")
    parser.add_argument("--units", choices=("us", "si"), default="us", help="units of the printed numbers")
    parser.add_argument("--json", action="store_true", help="print the findings as JSON, SI units")


def run(args):
    """Check, print, and return 0 dries, 1 does not or gets too wet on the way, 2 bad input."""
    found = jobs.find(args.files)
    roofs = {name: jobs.changed(job, args) for name, job in found.items() if not isinstance(job, str)}
    places = [Place("demo", id) for id in weather.demos()] if args.all_places else None
    work = sweep(roofs, places)
    results = []
    if work:
        tell = _progress(), args.spread, _hours(len(work))
        results = many(work, not args.steady, args.workers, args.scheduler, *tell, edition=args.edition)
    results += [{"name": name, "dries": None, "error": job} for name, job in found.items() if isinstance(job, str)]
    if args.json:
        print(json.dumps(results if len(results) > 1 else results[0], indent=1, ensure_ascii=False))
    else:
        for result in results:
            _print(result, args.units, brief=len(results) > 1)
    if any("error" in result for result in results):
        return 2
    return 0 if all(result["dries"] for result in results) else 1


def _progress():
    if not sys.stderr.isatty():
        return None

    def tell(done, total, result):
        if total > 1:
            print(f"\r{done} of {total}", end="" if done < total else "\n", file=sys.stderr, flush=True)

    return tell


def _hours(jobs):
    if jobs != 1 or not sys.stderr.isatty():
        return None

    def tell(done, total):
        print(f"\r{done} of {total} hours", end="" if done < total else "\n", file=sys.stderr, flush=True)

    return tell


def _print(result, units, brief):
    if "error" in result:
        print(f"dryward: {result['error']}", file=sys.stderr)
        return
    if brief:
        print(f"{result['outcome']:18} {result['name']}: {result['verdict']}")
        for warning in result["warnings"]:
            print(f"{'':18} {warning}")
        return
    from dryward.report.sheet import EDITION, LEGEND, MARKS, amount

    print(f"{result['assembly']}, {result['place']}")
    for warning in result["warnings"]:
        print(warning)
    print(f"{result['verdict']}\n{result['small']}\n\n{LEGEND}")
    for each in result["findings"]:
        print(f"{MARKS[each['good']]} {each['question']} {each['answer'].capitalize()}.")
        for key in ("what", "why", "change"):
            if each[key]:
                print(f"    {each[key]}")
        for number in each["numbers"]:
            print(f"    {number['label']}: {amount(Number(**number), units)}")
        if each["matters"]:
            print(f"    {each['matters']}")
        if each["limits"]:
            print(f"    Limits: {each['limits']}")
        if each["source"] and each["id"].startswith(("code-", "vents")):
            print(f"    Rule: {each['source']}.")
    for note in (*result["notes"], GRAIN):
        if note not in result["warnings"]:
            print(note)
    print(f"Code rows are {EDITION}.")
    print("As adopted locally; the building official decides.")
