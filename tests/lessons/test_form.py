"""The form of the notebooks: short code, no physics in them, headings, nothing stale inside."""

import ast
import re
import sys
from pathlib import Path

import nbformat
import pytest

from dryward.teaching import lessons

sys.path.insert(0, str(Path(__file__).parent))
import clean

#: Lines of code a notebook may have in all, blank lines and comments not counted.
BUDGET = 12
NOTEBOOKS = sorted(clean.LESSONS.glob("*.ipynb"))
NUMBERED = [each for each in lessons.lessons() if (clean.LESSONS / each.file).exists()]


@pytest.fixture(params=NOTEBOOKS, ids=lambda path: path.stem)
def notebook(request):
    return nbformat.read(request.param, as_version=4)


def code(notebook):
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


def test_every_page_has_its_notebook_and_every_notebook_its_lesson():
    files = {each.file: each.id for each in lessons.lessons()}
    assert {path.name for path in NOTEBOOKS} == set(files)
    for path in NOTEBOOKS:
        flag = nbformat.read(path, as_version=4).metadata["dryward"]["lesson"]
        assert flag == files[path.name]


def test_it_is_clean(notebook, request):
    path = request.node.callspec.params["notebook"]
    assert clean.text(clean.clean(notebook)) == path.read_text("utf-8"), "run tests/lessons/clean.py"


def test_it_is_valid(notebook):
    nbformat.validate(notebook)
    ids = [cell.id for cell in notebook.cells]
    assert len(set(ids)) == len(ids)
    assert "widgets" not in notebook.metadata


def test_it_starts_with_its_title_and_has_headings(notebook):
    titles = [line for cell in notebook.cells if cell.cell_type == "markdown" for line in cell.source.splitlines()]
    lesson = next(each for each in lessons.lessons() if each.id == notebook.metadata["dryward"]["lesson"])
    assert titles[0] == (f"# {lesson.number}. {lesson.title}" if lesson.number else f"# {lesson.title}")
    assert sum(line.startswith("# ") for line in titles) == 1
    assert any(line.startswith("## ") for line in titles)


def test_the_code_is_short_and_holds_no_physics(notebook):
    lines = [
        line
        for cell in code(notebook)
        for line in cell.source.splitlines()
        if line.strip() and not line.startswith("#")
    ]
    assert len(lines) <= BUDGET
    for cell in code(notebook):
        tree = ast.parse(cell.source)
        loops = (ast.FunctionDef, ast.Lambda, ast.For, ast.While, ast.ClassDef, ast.ListComp, ast.GeneratorExp)
        assert not any(isinstance(node, loops) for node in ast.walk(tree)), cell.source
        numbers = [
            node.value for node in ast.walk(tree) if isinstance(node, ast.Constant) and type(node.value) is float
        ]
        # Shares, tolerances and settings may be typed; a number of four figures is a constant of the kit.
        assert all(float(f"{number:.3g}") == number for number in numbers), numbers


def test_numbers_are_compared(notebook):
    printing = [cell for cell in code(notebook) if "print(" in cell.source]
    assert printing, "a lesson prints at least one number that is compared"
    for cell in printing:
        assert cell.metadata["tags"] == [clean.MARK]
        assert cell.execution_count == 1
        assert "".join(output.text for output in cell.outputs).strip()


def test_what_only_the_tests_need_is_not_shown(notebook):
    for cell in code(notebook):
        assert "nbval" not in cell.source.lower()
        assert not any(isinstance(node, ast.Assert) for node in ast.walk(ast.parse(cell.source)))


def test_a_page_is_hidden_code_with_a_telling_first_line(notebook):
    for cell in code(notebook):
        if "panels" in cell.source:
            assert cell.metadata["jupyter"]["source_hidden"]
            assert re.match(r"# \w.*\.\n", cell.source)


def test_every_lesson_has_the_same_shape(notebook):
    """Title, page, a number with its words, what is next; the index has its texts between page and number."""
    lesson = notebook.metadata["dryward"]["lesson"]
    kinds = [cell.cell_type for cell in notebook.cells]
    page = notebook.cells[1]
    assert kinds[:2] == ["markdown", "code"]
    assert re.search(rf'^page = panels\.page\("{lesson}"\)$', page.source, re.M)
    assert page.source.rstrip().endswith("page.widget")
    if lesson == "start":
        assert kinds[2:] == ["markdown"] * (len(kinds) - 3) + ["code"]
        return
    assert kinds[2:4] == ["markdown", "code"]
    assert kinds[-1] == "markdown"
    assert notebook.cells[-1].source.startswith("## Next\n")
    assert "[Start here](00-start.ipynb)" in notebook.cells[-1].source


def test_the_index_names_every_lesson():
    index = (clean.LESSONS / "00-start.ipynb").read_text("utf-8")
    for each in lessons.lessons()[1:]:
        assert f"[{each.title}]({each.file}), {each.minutes} minutes" in index


def test_the_cleaner_drops_state_and_unmarked_outputs():
    dirty = nbformat.v4.new_notebook(
        metadata={"widgets": {"x": 1}, "dryward": {"lesson": "july"}},
        cells=[
            nbformat.v4.new_code_cell("1", execution_count=7, outputs=[nbformat.v4.new_output("stream", text="1")]),
            nbformat.v4.new_code_cell(
                "print(2)",
                execution_count=9,
                outputs=[nbformat.v4.new_output("stream", text="2")],
                metadata={"tags": [clean.MARK]},
            ),
        ],
    )
    tidy = clean.clean(dirty)
    assert "widgets" not in tidy.metadata
    assert (tidy.cells[0].outputs, tidy.cells[0].execution_count) == ([], None)
    assert (tidy.cells[1].outputs[0].text, tidy.cells[1].execution_count) == ("2", 1)
    assert clean.text(clean.clean(tidy)) == clean.text(tidy)
