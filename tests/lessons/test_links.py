"""Every link of a lesson leads to a file of the lessons, and the last one to the lesson that follows."""

import itertools
import re
import sys
from pathlib import Path

import nbformat
import pytest

sys.path.insert(0, str(Path(__file__).parent))
from clean import LESSONS

NOTEBOOKS = sorted(LESSONS.glob("*.ipynb"))
_LINK = re.compile(r"\[[^\]]+\]\(([^)\s]+)\)")


def _links(source):
    return [target.split("#")[0] for target in _LINK.findall(source) if not target.startswith(("#", "http"))]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_every_link_leads_to_a_file(path):
    cells = nbformat.read(path, as_version=4).cells
    missing = [link for cell in cells for link in _links(cell.source) if not (LESSONS / link).is_file()]
    assert missing == []


@pytest.mark.parametrize(("path", "following"), list(itertools.pairwise(NOTEBOOKS[1:])), ids=lambda path: path.stem)
def test_next_is_the_lesson_that_follows(path, following):
    last = nbformat.read(path, as_version=4).cells[-1].source
    assert following.name in _links(last), last
