"""``dryward evidence``: every published check, computed again."""

import dataclasses
import json
import math

from dryward import evidence
from dryward.checks import OutOfRange
from dryward.cli import front_page


def add(parser):
    """Name the arguments of the command."""
    parser.add_argument("topics", nargs="*", metavar="TOPIC", help=f"of {', '.join(evidence.topics())}; all if none")
    parser.add_argument("--failed", action="store_true", help="print only the checks that fail")
    parser.add_argument("--summary", action="store_true", help="print one line for each source instead of each check")
    parser.add_argument("--json", action="store_true", help="print the whole table as JSON")
    parser.add_argument("--readme", action="store_true", help="write the summary into the README of this checkout")


def run(args):
    """Print the table; 1 when a check fails."""
    if args.readme and args.topics:
        raise OutOfRange("--readme writes the table of all topics; leave the topics out.")
    done = [(topic, check) for topic in (args.topics or evidence.topics()) for check in evidence.checks(topic)]
    failed = sum(not check.passed for _, check in done)
    if args.json:
        print(json.dumps([_plain(topic, check) for topic, check in done], indent=1, ensure_ascii=False))
    elif args.summary:
        print(summary(check for _, check in done))
    else:
        for line in _lines([pair for pair in done if not (args.failed and pair[1].passed)]):
            print(line)
    if args.readme:
        page = front_page.write("proof", by_topic(done))
        print(f"The table stands in {page}.")
    if not args.json:
        print(
            f"{len(done)} published or worked values computed again; {failed or 'none'} outside the allowed difference."
        )
    return 1 if failed else 0


def _plain(topic, check):
    found = {"topic": topic, **dataclasses.asdict(check)}
    found["difference"] = None if math.isnan(check.difference) else check.difference
    found["reading"], found["passed"] = check.reading, check.passed
    return found


def _number(value):
    if isinstance(value, str):
        return value
    return f"{value:.6g}"


_COLUMNS = ("expected", "got", "difference", "tolerance")


def _lines(done):
    """The table as text, one heading for each topic and place of reading."""
    shown_topic = shown_source = None
    for topic, check in done:
        if topic != shown_topic:
            yield f"\n{topic.upper()}\n{'':44}{'':2}" + "".join(f"{name:>13}" for name in _COLUMNS) + "  unit"
        source = f"{check.source}, {check.where} ({check.how_read})"
        if (topic, source) != (shown_topic, shown_source):
            yield f"  from {source}"
        shown_topic, shown_source = topic, source
        sign = "  " if check.passed else "! "
        numbers = "".join(f"{_number(getattr(check, name)):>13}" for name in _COLUMNS)
        yield f"{sign}{check.what[:90]:<44}{numbers}  {check.unit}".rstrip()


def by_topic(done):
    """The front page's table: for each topic how its values were read and how close they are.

    Parameters
    ----------
    done : sequence of (str, Check)
        Topic and check.

    Returns
    -------
    str
        Markdown.
    """
    topics = dict.fromkeys(topic for topic, _ in done)
    rows = [(topic, [check for name, check in done if name == topic]) for topic in topics]
    rows.append(("all", [check for _, check in done]))
    lines = [
        "| topic | values | read | worked outside the kit | from memory | sources | outside | closest to its limit |",
        "|---|---|---|---|---|---|---|---|",
    ]
    for topic, found in rows:
        read, worked, recalled = (sum(c.reading == how for c in found) for how in ("read", "worked", "from memory"))
        sources, outside = len({c.source for c in found}), sum(not c.passed for c in found)
        name = topic.replace("_", " ")
        lines.append(
            f"| {name} | {len(found)} | {read} | {worked} | {recalled} | {sources} | {outside} | {_closest(found)} |"
        )
    return "\n".join(lines)


def _closest(found):
    """The largest difference as a share of the allowed one."""
    shares = [abs(check.difference) / check.tolerance for check in found if check.tolerance > 0]
    return f"{max(shares):.0%}" if shares else "words only"


def summary(checks):
    """One line of Markdown for each source: how many values, how close.

    Parameters
    ----------
    checks : iterable of Check

    Returns
    -------
    str
        A table; the last column is the largest difference as a share of the
        allowed one.
    """
    by_source = {}
    for check in checks:
        by_source.setdefault(check.source, []).append(check)
    lines = ["| source | values | agree | largest share of the allowed difference |", "|---|---|---|---|"]
    for source, found in sorted(by_source.items()):
        lines.append(f"| {source} | {len(found)} | {sum(c.passed for c in found)} | {_closest(found)} |")
    return "\n".join(lines)
