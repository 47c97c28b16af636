"""No text that a reader sees stands in code, and no number is written past the reader's marks.

A reader is whoever learns, teaches, types a command, or runs the server of a
class and reads its log.  Who changes the kit reads English: docstrings, and
what a slip in the code itself raises.
"""

import ast
import re

import pytest

from package import docstrings, modules, path, tree

# --- texts --------------------------------------------------------------------------

#: Calls that show what they are given: to who types, to who reads the log.
SHOWN = ("print", "write", "debug", "info", "warning", "error", "exception", "critical", "warn")
#: Keywords under which a text is shown.
SHOWN_AS = ("help", "description", "epilog", "title", "metavar", "usage", "prog", "label", "words", "prompt")
#: Fewest words of a text; fewer are a name or a sign.
FEWEST = 4
#: Fewest of one that is shown where it stands.
FEWEST_SHOWN = 2

#: What is raised for a slip in the code itself: (module, words) -> why no reader sees it.
SLIPS = {
    ("dryward.language", "no message"): "a message that the code asks for and no file has",
    ("dryward.language", "is not given"): "a fact that the code forgot",
    ("dryward.report.check", "has no verdict"): "asked of a check of the codes, which has none",
    ("dryward.report.setting", "has no hours"): "asked of typed means before looking whether there are hours",
    ("dryward.building.library", "an empty field"): "caught a few lines on, where the row is named",
    ("dryward.weather", "has no attribute"): "Python's own sentence for a module",
    ("dryward.school.learners", "not a learner's code"): "a code that did not come through the door",
    ("dryward.teaching.questions", "has no messages of a lesson"): "a question whose messages are not there",
    ("dryward.teaching.questions", "gives no clear question"): "a question that its author must mend",
}

#: Literals of four words and more that no reader sees: (module, how it begins) -> what it is.
NO_TEXT = {
    ("dryward.cli.api", ""): "names of Python, as they are typed",
    ("dryward.cli.bench", "\nimport time"): "code that is run",
    ("dryward.cli.bench", "import time"): "code that is run",
    ("dryward.cli.bench", "from dryward import"): "code that is run",
    ("dryward.cli.bench", "import matplotlib"): "code that is run",
    ("dryward.teaching.notebooks", "# "): "code of a notebook",
    ("dryward.school.kernels", "\nimport os"): "code that is run",
    ("dryward.school.kernels", "_os.makedirs"): "code that is run",
    ("dryward.building.code_rows", "rule edition"): "columns of a table",
    ("dryward.building.code_rows", "edition zone"): "columns of a table",
    ("dryward.evidence.examples", ""): "layers as a published example has them",
    ("dryward.units.quantities", ""): "writings of units that are understood",
    ("dryward.weather.loggers.samples", ""): "files of loggers, as their makers write them",
    ("dryward.weather.places", "# Invented."): "the table that it writes",
    ("dryward.weather.places", "place,month"): "the table that it writes",
    ("dryward.teaching.guide", "python -c"): "a command to type",
    ("dryward.teaching.guide", "paper.paper"): "what is typed in it",
    ("dryward.report.code_checks", "International Energy"): "the name of a code",
    ("dryward.school.server", ""): "rules that a browser follows",
    ("dryward.teaching.lessons", "The lessons of"): "the docstring of a module that is made",
    ("dryward.building.layer_order", "roof covering or cladding"): "chooses a message",
    ("dryward.weather.loggers.diagnosis", ""): "keys of the numbers that a diagnosis goes by",
    ("dryward.weather.loggers.guessing", ""): "keys, and what titles are searched for",
    ("dryward.teaching.kinds", ""): "keys of a diagnosis",
    ("dryward.course.your_readings.page", ""): "keys of a diagnosis",
    ("dryward.evidence.airflow", "cfm for each"): "what a row of the tables asks for",
    ("dryward.evidence.diffusion", ""): "what a row of the tables asks for",
    ("dryward.evidence.quantities", ""): "what a row of the tables asks for",
    ("dryward.evidence.weather", "class room vapor"): "what a row of the tables asks for",
    ("dryward.school.handlers", "text/html"): "the kind of an answer",
}

#: Functions that look a name up in the language (names.ftl) before it is shown; `tests/test_units_language.py`
#: holds those of `checks` to it.
NAMING = ("within", "single", "checked", "rising", "of_kind", "subject", "entry", "UnknownName", "called", "_not")


def words(text):
    return re.findall(r"[A-Za-z]{2,}", text)


def said(node):
    """The text of a literal, with braces where something is put in; None for another node."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return node.value
    if isinstance(node, ast.JoinedStr):
        return "".join(part.value if isinstance(part, ast.Constant) else "{}" for part in node.values)
    return None


def called(node):
    """The name that a call is of."""
    return getattr(node.func, "id", getattr(node.func, "attr", ""))


def texts_below(node):
    """The literals in an expression, but for those of calls in it, which look to their own."""
    waiting = [node]
    while waiting:
        each = waiting.pop()
        if said(each) is not None:
            yield each
        elif not isinstance(each, ast.Call):
            waiting += ast.iter_child_nodes(each)


def shown_literals(root):
    """(line, text) of each literal that is printed, logged, or given as a help, a title or a label."""
    for node in ast.walk(root):
        if not isinstance(node, ast.Call):
            continue
        given = list(node.args) if called(node) in SHOWN else []
        given += [each.value for each in node.keywords if each.arg in SHOWN_AS]
        for literal in (found for each in given for found in texts_below(each)):
            text = said(literal)
            if len(words(text)) >= FEWEST_SHOWN and " " in text.strip():
                yield literal.lineno, text


def raised_literals(root):
    """(line, text) of each literal in what is raised."""
    for node in ast.walk(root):
        if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call):
            for literal in (found for each in node.exc.args for found in texts_below(each)):
                if len(words(said(literal))) >= 2 and " " in said(literal) and called(node.exc) not in NAMING:
                    yield literal.lineno, said(literal)


def long_literals(name, root):
    """(line, text) of each literal of four words and more that is no docstring and no name of the language."""
    known = {id(each) for each in docstrings(name)}
    for node in ast.walk(root):
        if isinstance(node, (ast.JoinedStr, ast.FormattedValue)):
            known |= {id(each) for each in ast.iter_child_nodes(node)}
        if isinstance(node, ast.Assert) and node.msg is not None:  # for who changes the kit
            known.add(id(node.msg))
        if isinstance(node, ast.Call) and called(node) == "compile":  # what a text is searched for
            known |= {id(each) for each in ast.walk(node)}
        if isinstance(node, ast.Call) and called(node) in ("match", "fullmatch", "search", "sub"):
            known |= {id(each) for each in node.args[:1]}
    for node in ast.walk(root):
        text = said(node)
        if text is None or id(node) in known or " " not in text or text.lstrip().startswith(("<", "{")):
            continue
        if len(words(text)) >= FEWEST and not in_the_language(text):
            yield node.lineno, text


def in_the_language(text):
    """Whether it is a name that the language has, as it begins a sentence or as it stands in one."""
    from dryward import language

    return any(
        language.has(f"names.{language.slug(each.lower())}")
        and language.message(f"names.{language.slug(each.lower())}") == each
        for each in (text, text[:1].lower() + text[1:])
    )


def test_what_is_shown_is_a_message():
    assert [f"{path(name)}:{line} {text}" for name in modules() for line, text in shown_literals(tree(name))] == []


def test_what_is_raised_is_a_message():
    left = [
        f"{path(name)}:{line} {text}"
        for name in modules()
        for line, text in raised_literals(tree(name))
        if not any(name == module and part in text for module, part in SLIPS)
    ]
    assert left == []


def test_no_other_text_is_left_in_the_code():
    left = [
        f"{path(name)}:{line} {text}"
        for name in modules()
        for line, text in long_literals(name, tree(name))
        if not any(name == module and text.startswith(start) for module, start in NO_TEXT)
        and not any(name == module and part in text for module, part in SLIPS)
    ]
    assert left == []


def test_each_exception_is_needed():
    every = {name: [text for _, text in long_literals(name, tree(name))] for name in modules()}
    raised = {name: [text for _, text in raised_literals(tree(name))] for name in modules()}
    for module, start in NO_TEXT:
        assert any(text.startswith(start) for text in every[module]), (module, start)
    for module, part in SLIPS:
        assert any(part in text for text in raised[module]), (module, part)


PLANTED = {
    'print("The roof is dry.")': shown_literals,
    'print("\\n" + f"Roof {name} is dry")': shown_literals,
    'self.log.warning("%s took %.0f MB: ended", who, much)': shown_literals,
    'parser.add_argument("--folder", help="where the answers are")': shown_literals,
    'Unicode(config=True, help="folder of the class")': shown_literals,
    'raise OutOfRange(f"There is no picture of {thing}.")': raised_literals,
    'raise AttributeError(f\'dryward has no "{name}"{f"; did you mean {near}?" if near else "."}\')': raised_literals,
}


@pytest.mark.parametrize(("code", "finder"), PLANTED.items(), ids=PLANTED)
def test_a_text_in_code_is_found(code, finder):
    assert list(finder(ast.parse(code)))


# --- numbers ------------------------------------------------------------------------

#: Formats that put a mark between digits.
_MARKED = re.compile(r"[fFgGeE%n]$|,")
#: Calls that take a number as Python writes it: to put the reader's marks in, or to read it again.
TAKERS = ("figures", "sums", "written", "float", "int", "Step")

#: Numbers that no reader reads: module -> what they are.
NO_READER = {
    "dryward.weather.loggers.samples": "files of loggers, as their makers write them",
    "dryward.pictures.scenery": "places in a drawing, as SVG has them",
    "dryward.pictures.house": "the same",
    "dryward.pictures.instruments": "the same",
}
#: A single number -> what it is.
NOT_SHOWN = {
    ("dryward.building.assembly", "rise"): "a slope as it stands in a file",
    ("dryward.panels.desk.house", "value"): "the key of an option, which the browser sends back",
    ("dryward.panels.desk.house", "job.azimuth"): "the key of an option",
    ("dryward.panels.desk.house", "job.absorptance"): "the key of an option",
    ("dryward.panels.desk.house", "share / 100"): "the key of an option",
    ("dryward.units.table", "value"): "where the reader's marks are put in, a line on",
    ("dryward.units.table", "format(value, form)"): "the same",
    ("dryward.units.table", "first - second"): "the same, in the same line",
    ("dryward.weather.places", "warmth"): "the table that it writes",
    ("dryward.weather.places", "share"): "the table that it writes",
}


def numbers_past_the_marks(root):
    """(line, number) of each number that is formatted outside of what puts the reader's marks in."""
    taken = set()
    for node in ast.walk(root):
        if isinstance(node, ast.Call) and called(node) in TAKERS:
            taken |= {id(each) for each in ast.walk(node)}
    for node in ast.walk(root):
        if isinstance(node, ast.FormattedValue) and id(node) not in taken and node.format_spec is not None:
            spec = said(node.format_spec)
            if _MARKED.search(spec) or (spec.endswith("{}") and not re.search("[<>^]", spec)):
                yield node.lineno, ast.unparse(node.value)
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "format" and id(node) not in taken:
            yield node.lineno, ast.unparse(node)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and re.search(r"%[.\d]*[feg]\b", node.value):
            yield node.lineno, node.value


def test_a_number_is_written_with_the_readers_marks():
    left = [
        f"{path(name)}:{line} {number}"
        for name in modules()
        if name not in NO_READER
        for line, number in numbers_past_the_marks(tree(name))
        if (name, number) not in NOT_SHOWN
    ]
    assert left == []


@pytest.mark.parametrize(
    "code", ['f"{rate:.3g} g"', 'f"{share:.0%}"', 'f"{many:,}"', 'f"{rate:.{digits}f}"', 'format(rate, ".2f")']
)
def test_a_number_past_the_marks_is_found(code):
    assert list(numbers_past_the_marks(ast.parse(code)))
    assert not list(numbers_past_the_marks(ast.parse(f"figures({code})")))
