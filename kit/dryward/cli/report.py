"""``dryward report``: the printed page of one roof, as PDF or HTML."""

import argparse
from pathlib import Path

from dryward import storage
from dryward.checks import BadFile, OutOfRange
from dryward.cli.check import add_roof, changed, find


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    parser.add_argument("file", metavar="FILE", help="an assembly or job file, or a preset")
    parser.add_argument(
        "-o", "--output", metavar="FILE", required=True, help="where to write it: a name in .pdf or .html"
    )
    parser.add_argument("--paper", choices=("letter", "a4"), help="otherwise letter for US units, a4 for SI")
    parser.add_argument("--units", choices=("us", "si"), default="us")
    parser.add_argument("--overwrite", action="store_true", help="replace a file of that name")
    add_roof(parser)


def run(args: argparse.Namespace) -> int:
    """Write the page; 0 when it is written."""
    path = Path(args.output)
    if path.suffix.lower() not in (".pdf", ".html", ".htm"):
        raise OutOfRange(f"The report is written as .pdf or .html, not {path.suffix or 'a file without an ending'}.")
    if path.exists() and not args.overwrite:
        raise BadFile(f"{path.name}: there is already a file of that name; --overwrite replaces it.")
    if not path.parent.is_dir():
        raise BadFile(f"{path.name}: it cannot be written; there is no folder {path.parent}.")
    found = find([args.file])
    if len(found) > 1:
        raise OutOfRange(f"A report is about one roof; {args.file} holds {len(found)}.")
    (name, job), *_ = found.items()
    if isinstance(job, str):
        raise BadFile(job)
    from dryward.report import document, printed, review

    options = {"hourly": not args.steady, "spread": args.spread, "edition": args.edition, "with_trials": not args.quick}
    checked = review(changed(job, args), **options)
    made = document.document(checked, args.units, Path(name).name)
    size = args.paper or {"us": "letter", "si": "a4"}[args.units]
    content = printed.pdf(made, size) if path.suffix.lower() == ".pdf" else printed.html(made, size).encode("utf-8")
    try:
        storage.write_whole(path, content)
    except OSError as error:
        raise BadFile(f"{path.name}: it cannot be written ({error.strerror}).") from None
    print(f"{path}: {checked.headline}")
    return 0
