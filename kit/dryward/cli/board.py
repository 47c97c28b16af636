"""``dryward board``: how a class stands, from the learners' own files; nothing leaves this computer."""

import argparse
from collections.abc import Sequence
from pathlib import Path

from dryward.language import message
from dryward.school import folders
from dryward.school.standing import board, held_heads, held_rows, learner_folders, right_of, titles
from dryward.teaching import lessons


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    parser.add_argument("--folder", type=Path, help=message("cli.board-folder"))


def run(args: argparse.Namespace) -> int:
    """Print the board."""
    folder = (args.folder or folders.class_folder()).expanduser()
    found = board(learner_folders(folder))
    if not found.learners:
        print(message("cli.board-nobody", folder=str(folder)))
        return 0
    named = titles()
    rows = [
        (
            each.label,
            each.trouble or named.get(each.lesson, ""),
            each.prediction,
            right_of(each.right, each.answered),
            right_of(each.first, each.tried),
            str(each.finished),
            "" if each.minutes is None else str(each.minutes),
        )
        for each in found.learners
    ]
    heads = (
        message("cli.board-learner"),
        message("cli.board-lesson"),
        message("cli.board-predicted"),
        message("cli.board-checks-right"),
        message("cli.board-first-try"),
        message("cli.board-finished"),
        message("cli.board-minutes-ago"),
    )
    print(_table(heads, rows))
    for trouble in lessons.troubles():
        print(trouble)
    for group in found.groups:
        print("\n" + message("school.here-now", lesson=named[group.lesson], here=str(group.here)))
        mark = message("cli.board-right")
        for key, text, right, count in group.choices:
            print(f"  {count:3d}  {mark if right else ' ' * len(mark)}  {key}  {text}")
        if group.answered:
            facts = {"right": str(group.right), "answered": str(group.answered)}
            told = message("cli.board-checks", first=str(group.first), tried=str(group.tried), **facts)
            print(f"  {told}")
        for claim, times in group.beliefs[:3]:
            print(f"  {message('cli.board-said', count=times, claim=claim)}")
        if held := held_rows(group):
            print(_table(held_heads(), held))
    return 0


def _table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    wide = [max(len(row[column]) for row in (heads, *rows)) for column in range(len(heads))]
    lines = ("  ".join(map(str.ljust, row, wide)).rstrip() for row in (heads, *rows))
    return "\n".join(lines)
