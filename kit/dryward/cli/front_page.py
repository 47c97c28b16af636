"""Puts a table between its two marks in the README."""

from pathlib import Path

from dryward import storage
from dryward.checks import BadFile
from dryward.language import message


def marks(topic: str) -> tuple[str, str]:
    """The two lines between which the table of a topic stands."""
    return f"<!-- {topic}: written by `dryward {_COMMAND[topic]}` -->", f"<!-- end of {topic} -->"


_COMMAND = {"speed": "bench --readme", "proof": "evidence --readme", "lessons": "lessons --write"}


def write(topic: str, table: str, path: Path = Path("README.md")) -> Path:
    """Replace what stands between the marks of a topic, in the folder where the command was typed."""
    begin, end = marks(topic)
    try:
        words = path.read_text(encoding="utf-8")
    except OSError:
        raise BadFile(message("cli.no-readme-here", file=str(path))) from None
    if begin not in words or end not in words:
        raise BadFile(message("cli.no-place-for-table", file=str(path), begin=begin, end=end))
    before, _, rest = words.partition(begin)
    storage.write_whole(path, f"{before}{begin}\n\n{table}\n\n{end}{rest.partition(end)[2]}")
    return path
