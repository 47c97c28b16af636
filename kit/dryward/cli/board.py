"""``dryward board``: how a class stands, from the learners' own files; nothing leaves this computer."""

import argparse
from collections.abc import Sequence
from pathlib import Path

from dryward.school import folders
from dryward.school.standing import board, learner_folders
from dryward.teaching import lessons

_HEADS = ("learner", "lesson", "predicted", "checks right", "finished", "minutes ago")


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    parser.add_argument("--folder", type=Path, help="where the learners' answers are kept, a folder for each")


def run(args: argparse.Namespace) -> int:
    """Print the board."""
    folder = (args.folder or folders.class_folder()).expanduser()
    found = board(learner_folders(folder))
    if not found.learners:
        print(f"Nobody has opened a lesson yet; the answers are looked for in {folder}")
        return 0
    titles = {each.id: f"{each.number}. {each.title}" for each in lessons.lessons()}
    rows = [
        (
            each.label,
            each.trouble or titles.get(each.lesson, ""),
            each.prediction,
            f"{each.right} of {each.answered}" if each.answered else "",
            str(each.finished),
            "" if each.minutes is None else str(each.minutes),
        )
        for each in found.learners
    ]
    print(_table(_HEADS, rows))
    for trouble in lessons.troubles():
        print(trouble)
    for group in found.groups:
        print(f"\n{titles[group.lesson]}: {group.here} here now")
        for key, text, right, count in group.choices:
            print(f"  {count:3d}  {'right' if right else '     '}  {key}  {text}")
        if group.answered:
            print(f"  checks: {group.right} of {group.answered} right")
        for claim, times in group.beliefs[:3]:
            print(f"  said {times} time{'s' if times > 1 else ''}: {claim}")
    return 0


def _table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    wide = [max(len(row[column]) for row in (heads, *rows)) for column in range(len(heads))]
    lines = ("  ".join(map(str.ljust, row, wide)).rstrip() for row in (heads, *rows))
    return "\n".join(lines)
