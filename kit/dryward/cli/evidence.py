"""``dryward evidence``: every published check, computed again."""

import argparse
import dataclasses
import json
import math
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from dryward import evidence
from dryward.checks import OutOfRange
from dryward.cli import front_page
from dryward.evidence.table import OWN, READINGS, Check
from dryward.language import called, joined, message, read_off, sign
from dryward.units import written


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    topics = joined("cli.name-after-name", evidence.topics())
    parser.add_argument(
        "topics", nargs="*", metavar=message("cli.meta-topic"), help=message("cli.evidence-topics", topics=topics)
    )
    parser.add_argument("--failed", action="store_true", help=message("cli.evidence-failed"))
    parser.add_argument("--summary", action="store_true", help=message("cli.evidence-summary"))
    parser.add_argument("--json", action="store_true", help=message("cli.evidence-json"))
    parser.add_argument("--readme", action="store_true", help=message("cli.evidence-readme"))


def run(args: argparse.Namespace) -> int:
    """Print the table; 1 when a check fails."""
    if args.readme and args.topics:
        raise OutOfRange(message("cli.evidence-all-topics"))
    done = [(topic, check) for topic in (args.topics or evidence.topics()) for check in evidence.checks(topic)]
    # The kit's own come last, and are not counted.
    done.sort(key=lambda pair: pair[1].reading == OWN)
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
        print(message("cli.table-stands", file=str(page)))
    if not args.json:
        own = [check for _, check in done if check.reading == OWN]
        counted = [check for _, check in done if check.reading != OWN]
        print(message("cli.evidence-counted", count=str(len(counted)), outside=_outside(counted)))
        if own:
            print(message("cli.evidence-own", count=str(len(own)), outside=_outside(own)))
    return 1 if failed else 0


def _outside(checks: Sequence[Check]) -> int:
    return sum(not check.passed for check in checks)


def _plain(topic: str, check: Check) -> dict[str, Any]:
    found = {"topic": topic, **dataclasses.asdict(check)}
    found["difference"] = None if math.isnan(check.difference) else check.difference
    found["reading"], found["passed"] = check.reading, check.passed
    return found


def _number(value: float | str) -> str:
    if isinstance(value, str):
        return value
    return written(value, ".6g")


_COLUMNS = ("expected", "got", "difference", "tolerance")


def _lines(done: Sequence[tuple[str, Check]]) -> Iterator[str]:
    """The table as text, one heading for each topic and place of reading."""
    shown_topic = shown_source = None
    for place, check in done:
        topic = message("cli.own-topic", topic=place) if check.reading == OWN else place
        if topic != shown_topic:
            heads = "".join(f"{message(f'cli.column-{name}'):>13}" for name in _COLUMNS)
            yield f"\n{topic.upper()}\n{'':44}{'':2}{heads}  {message('cli.column-unit')}"
        source = message("cli.from-source", source=check.source, where=check.where, how=check.how_read)
        if (topic, source) != (shown_topic, shown_source):
            yield f"  {source}"
        shown_topic, shown_source = topic, source
        mark = "  " if check.passed else "! "
        numbers = "".join(f"{_number(getattr(check, name)):>13}" for name in _COLUMNS)
        yield f"{mark}{read_off(check.what)[:90]:<44}{numbers}  {sign(check.unit)}".rstrip()


def by_topic(done: Sequence[tuple[str, Check]]) -> str:
    """The front page's table in Markdown: for each topic how its values were read and how close they are."""
    topics = dict.fromkeys(topic for topic, _ in done)
    rows = [(topic, [check for name, check in done if name == topic]) for topic in topics]
    rows.append((message("cli.all-topics"), [check for _, check in done]))
    heads = (
        message("cli.head-topic"),
        message("cli.head-values"),
        message("cli.head-read"),
        message("cli.head-worked"),
        message("cli.head-memory"),
        message("cli.head-sources"),
        message("cli.head-outside"),
        message("cli.head-closest"),
        message("cli.head-own"),
    )
    lines = []
    for topic, found in rows:
        counted = [check for check in found if check.reading != OWN]
        how = [sum(check.reading == each for check in found) for each in READINGS]
        cells = [topic.replace("_", " "), len(counted), *how[:-1], len({check.source for check in counted})]
        cells += [sum(not check.passed for check in counted), _closest(counted), how[-1]]
        lines.append(cells)
    return front_page.table(heads, lines)


def _closest(found: Sequence[Check]) -> str:
    """The largest difference as a share of the allowed one."""
    shares = [abs(check.difference) / check.tolerance for check in found if check.tolerance > 0]
    return written(max(shares), ".0%") if shares else message("cli.words-only")


def summary(checks: Iterable[Check]) -> str:
    """A table in Markdown, a line for each source: how many values, how close; the kit's own stand last."""
    by_source: dict[tuple[bool, str], list[Check]] = {}
    for check in checks:
        by_source.setdefault((check.reading == OWN, check.source), []).append(check)
    heads = (
        message("cli.head-source"),
        message("cli.head-values"),
        message("cli.head-agree"),
        message("cli.head-share"),
    )
    rows = []
    for (own, source), found in sorted(by_source.items()):
        name = message("cli.not-counted", own=called(OWN), source=source) if own else source
        rows.append((name, len(found), sum(c.passed for c in found), _closest(found)))
    return front_page.table(heads, rows)
