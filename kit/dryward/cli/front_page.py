"""Puts a table between its two marks in the README."""

from collections.abc import Iterable, Sequence
from pathlib import Path

from dryward import storage
from dryward.checks import BadFile
from dryward.language import message


def marks(topic: str) -> tuple[str, str]:
    """The two lines between which the table of a topic stands."""
    return f"<!-- {topic}: written by `dryward {_COMMAND[topic]}` -->", f"<!-- end of {topic} -->"


_COMMAND = {"speed": "bench --readme", "proof": "evidence --readme", "lessons": "lessons --write"}


def table(heads: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """A table in Markdown."""
    lines = [heads, *rows]
    told = [f"| {' | '.join(map(str, cells))} |" for cells in lines]
    return "\n".join([told[0], "|---" * len(heads) + "|", *told[1:]])


def write(topic: str, words: str, path: Path = Path("README.md")) -> Path:
    """Put other words between the marks of a topic, in the folder where the command was typed."""
    begin, end = marks(topic)
    try:
        page = path.read_text(encoding="utf-8")
    except OSError:
        raise BadFile(message("cli.no-readme-here", file=str(path))) from None
    if begin not in page or end not in page:
        raise BadFile(message("cli.no-place-for-table", file=str(path), begin=begin, end=end))
    before, _, rest = page.partition(begin)
    storage.write_whole(path, f"{before}{begin}\n\n{words}\n\n{end}{rest.partition(end)[2]}")
    return path
