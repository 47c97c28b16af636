"""Clean the notebooks: ``python tests/lessons/clean.py [--run] [FILES]``.

Keeps outputs only where a cell has the tag ``nbval-check-output`` (with the
execution count 1, without which nothing would compare it), empties all other
code cells, and drops widget state.  ``--run`` runs each notebook first, so
that the kept outputs are new ones.  Running it twice changes nothing.
"""

import argparse
import sys
from pathlib import Path

import nbformat

MARK = "nbval-check-output"
LESSONS = Path(__file__).resolve().parent.parent.parent / "lessons"


def clean(notebook):
    """Clean one notebook in place.

    Parameters
    ----------
    notebook : NotebookNode

    Returns
    -------
    NotebookNode
        The same one.
    """
    for key in set(notebook.metadata) - {"kernelspec", "language_info", "dryward"}:
        del notebook.metadata[key]
    notebook.metadata["language_info"] = {"name": "python"}
    for cell in notebook.cells:
        hidden = cell.metadata.get("jupyter", {}).get("source_hidden", False)
        kept = MARK in cell.metadata.get("tags", ())
        told = {"jupyter": {"source_hidden": True}} if hidden else {"tags": [MARK]} if kept else {}
        cell.metadata = nbformat.from_dict(told)
        if cell.cell_type != "code":
            continue
        cell.execution_count = 1 if kept else None
        cell.outputs = [each for each in cell.outputs if each.output_type == "stream"] if kept else []
    return notebook


def text(notebook):
    """A notebook as it is written to its file."""
    return nbformat.writes(notebook, version=nbformat.NO_CONVERT) + "\n"


def run(notebook, folder):
    """Run a notebook in its folder, in place."""
    from nbclient import NotebookClient

    NotebookClient(notebook, store_widget_state=False, resources={"metadata": {"path": str(folder)}}).execute()


def main(arguments=None):
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("files", nargs="*", type=Path, default=sorted(LESSONS.glob("*.ipynb")))
    parser.add_argument("--run", action="store_true", help="run each notebook first")
    given = parser.parse_args(arguments)
    for path in given.files:
        before = path.read_text("utf-8")
        notebook = nbformat.reads(before, as_version=4)
        if given.run:
            run(notebook, path.resolve().parent)
        after = text(clean(notebook))
        if after != before:
            path.write_text(after, "utf-8")
            print(f"cleaned {path.name}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
