"""``dryward report``: the printed page of one roof, as PDF or HTML."""

import argparse
from pathlib import Path

from dryward import storage
from dryward.checks import BadFile, OutOfRange
from dryward.cli.check import add_roof, changed, find
from dryward.language import message
from dryward.report import review
from dryward.units import read_in


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    parser.add_argument("file", metavar=message("cli.meta-file"), help=message("cli.report-file"))
    parser.add_argument(
        "-o", "--output", metavar=message("cli.meta-file"), required=True, help=message("cli.report-output")
    )
    parser.add_argument("--paper", choices=("letter", "a4"), help=message("cli.report-paper"))
    parser.add_argument("--units", choices=("us", "si"), default="us")
    parser.add_argument("--overwrite", action="store_true", help=message("cli.report-overwrite"))
    add_roof(parser)


def run(args: argparse.Namespace) -> int:
    """Write the page; 0 when it is written."""
    path = Path(args.output)
    if path.suffix.lower() not in (".pdf", ".html", ".htm"):
        raise OutOfRange(message("cli.report-ending", ending=path.suffix or message("cli.no-ending")))
    if path.exists() and not args.overwrite:
        raise BadFile(message("cli.report-there", file=path.name))
    if not path.parent.is_dir():
        raise BadFile(message("cli.report-no-folder", file=path.name, folder=str(path.parent)))
    found = find([args.file])
    if len(found) > 1:
        raise OutOfRange(message("cli.report-one-roof", file=args.file, count=str(len(found))))
    (name, job), *_ = found.items()
    if isinstance(job, str):
        raise BadFile(job)
    from dryward.report import document, printed

    options = {"hourly": not args.steady, "spread": args.spread, "edition": args.edition, "with_trials": not args.quick}
    checked = review(changed(job, args), **options)
    made = document.document(checked, args.units, Path(name).name)
    size = args.paper or {"us": "letter", "si": "a4"}[args.units]
    content = printed.pdf(made, size) if path.suffix.lower() == ".pdf" else printed.html(made, size).encode("utf-8")
    try:
        storage.write_whole(path, content)
    except OSError as error:
        raise BadFile(message("cli.report-not-written", file=path.name, why=error.strerror)) from None
    print(message("cli.report-written", file=str(path), headline=read_in(checked.headline, args.units)))
    return 0
