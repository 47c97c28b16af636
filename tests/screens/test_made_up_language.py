"""Every page of the registry in a made-up language: no word of it stands in the code."""

import re

import pytest
from lesson_page import first_visit, on_the_way, open_page
from matplotlib.text import Text

import made_up
from dryward import language, school
from dryward.building import library
from dryward.panels import protocol
from dryward.panels.desk import parts
from dryward.panels.desk.layers import _NARROW
from dryward.teaching import lessons
from dryward.weather import loggers
from turns import in_turn

PAGES = ("start", *lessons.pages())


#: What of a message to the browser is no text of the reader's: ids, keys and looks.
NO_TEXT = {
    "name", "id", "key", "kind", "class", "type", "file", "mark", "answer", "system", "spans", "value", "state", "fold",
    "accept", "at", "points", "axes", "side", "look", "glyph", "control",
}  # fmt: skip
#: Of the frame, what is asked at the end of a lesson and what is warned of.
ASKED = ("questions", "cautions")
#: The product's own name, what the learner's files are called, the number of a class of the code.
NAMES = ("dryward", "my-roof.toml", "toml", "csv", "epw", "pdf", "II")


#: Where the browser puts what it reads off a film.
FILLED = re.compile(r"\{(?:outdoors|moisture)\}")


@pytest.fixture(scope="module")
def spoken():
    """The made-up language."""
    with made_up.spoken():
        yield


def texts(part, key=""):
    """All that a reader sees in what goes to the browser."""
    if isinstance(part, str):
        yield part
    elif isinstance(part, dict):
        for name, inside in part.items():
            readout = name == "value" and "also" in part  # of a field it is what the learner types
            if name == "film" and isinstance(inside, str):
                continue  # which tag of a film the browser writes into
            if readout or name not in NO_TEXT:
                yield from texts(inside, name)
    elif isinstance(part, (list, tuple)):
        for inside in part:
            yield from texts(inside, key)


def drawn(page):
    """All words in the pictures of a page."""
    for picture, view in zip(page.live_pictures(), page.result.views, strict=True):
        figure = picture._for(view).figure
        yield from (each.get_text() for each in figure.findobj(Text) if each.get_visible())


def told(page):
    """All words of a page as it stands."""
    yield from texts({key: inside for key, inside in page.widget.frame.items() if key not in ASKED})
    yield from texts({k: v for k, v in page.widget.live.items() if k not in ("values", "retype")})
    # The documents that values come from are cited by their own names.
    layers = page.draft.job.assembly.layers if page.id == "your-roof" else ()
    cited = {library.source_of(each.substance, _NARROW) for each in layers}
    yield from (each for each in texts(page.widget.desk) if each not in cited)
    if not page.covered:
        yield from drawn(page)


def titles():
    """The titles of columns in the sample files of loggers: what a file says is shown as it is."""
    for name in loggers.names():
        with loggers.sample(name) as path:
            head = path.read_bytes().decode("utf-8", "replace").splitlines()[0]
            yield from (each.strip(' "') for each in re.split("[,;\t]", head) if each.strip())


def unmarked(found, allowed=NAMES):
    """Words of texts outside of marks, and numbers with a decimal point, with the text they stand in."""
    return {
        text[:200]: bare
        for text in found
        if (bare := made_up.unmarked(FILLED.sub("", whole(text)), allowed) + made_up.points(text, allowed))
    }


def whole(text):
    """A text that was cut to its room, or set in two lines, with both of its marks."""
    lacking = text.count(made_up.OPEN) - text.count(made_up.CLOSE)
    return made_up.OPEN * -lacking + text + made_up.CLOSE * lacking


@pytest.mark.parametrize(
    # `test_every_text.py` reads each page in the other system.
    ("id", "system"),
    in_turn(PAGES, ("us", "si")),
)
def test_a_page_speaks_another_language(id, system, tmp_path, spoken, monkeypatch):
    monkeypatch.chdir(tmp_path)
    page = first_visit(id, tmp_path, system)
    allowed = (*NAMES, *titles()) if id == "your-readings" else NAMES
    for _ in on_the_way(page):
        assert unmarked(told(page), allowed) == {}
    page.hear({"kind": "fold", "key": "arithmetic", "open": True})
    for task in page.tasks.tasks:
        page.hear({"kind": "desk", "key": f"task:check:{task.id}", "value": None})
    assert unmarked(told(page), allowed) == {}
    for control in page.controls.values():
        for value in (control.options[-1:] if page.slow else control.options) or (control.min, control.max):
            control.value = value
            assert unmarked(told(page), allowed) == {}
        control.value = control.start


@pytest.mark.parametrize("id", PAGES)
def test_questions_and_cautions_of_a_page_speak_it_too(id, tmp_path, spoken):
    page = open_page(id, tmp_path)
    assert id == "start" or 3 <= len(page.widget.frame["questions"]) <= 5
    for number in range(len(page.questions.asked)):
        page.hear({"kind": "answer", "number": number, "choice": 0})
    assert unmarked(texts({key: page.widget.frame[key] for key in ASKED})) == {}
    for number, question in enumerate(page.questions.asked):
        right = [each.right for each in question.choices].index(True)
        page.hear({"kind": "answer", "number": number, "choice": right})
    page.hear({"kind": "predict", "choice": 0})
    page.hear({"kind": "reveal"})
    for still in page.widget.frame["still"]:
        page.hear({"kind": "still", "belief": still["id"], "holds": bool(page.lesson.number % 2)})
    after = {key: page.widget.frame[key] for key in ("questions", "still", "prediction")}
    assert unmarked(texts({**after, "on": page.widget.frame["on"].get("links", {})})) == {}


def test_the_served_pages(spoken, tmp_path):
    pytest.importorskip("voila")
    from dryward.school import handlers, server, standing

    show = {"base": "/", "form": "", "inside": True}
    first = standing.contents(tmp_path)
    for way in first["ways"]:  # their titles are words of the teaching room
        way |= {"title": made_up.longer(way["title"]), "who": made_up.longer(way["who"])}
        for session in way["sessions"]:
            session["title"] = made_up.longer(session["title"])
    made = [
        ("enter.html", {"wrong": "", "next": "/"}),
        ("error.html", {"title": "", "words": ""}),
        ("contents.html", {"code": "abcde", **first}),
        (
            "board.html",
            {"board": standing.board({}), "groups": [], "titles": {}, "nobody": standing.nobody_yet()},
        ),
    ]
    for name, facts in made:
        page = server.environment().get_template(name).render(**show, **facts)
        shown = re.sub(r"(?s)<style>.*?</style>|<script.*?</script>|<code>.*?</code>|<!DOCTYPE html>", "", page)
        spoken_of = re.findall(r'(?:aria-label|title|placeholder)="([^"]*)"', shown)
        assert unmarked([re.sub(r"(?s)<[^>]*>", " ", shown), *spoken_of]) == {}, name
    assert unmarked(re.sub("<[^>]*>", "", text) for text in handlers.lesson_words("1", "/").values()) == {}


def test_the_pages_ask_for_what_there_is():
    """Each message of the templates is there, and each is asked for."""
    from pathlib import Path

    folder = Path(school.__file__).parent / "share" / "voila" / "templates" / "dryward"
    asked = {id for page in folder.glob("*.html") for id in re.findall(r'say\("([a-z-]+)"', page.read_text("utf-8"))}
    asked |= set(re.findall(r'else say\("([a-z-]+)"', (folder / "error.html").read_text("utf-8")))
    file = Path(language.__file__).parent / "en" / "school.ftl"
    assert asked == set(re.findall(r"(?m)^page-([a-z-]+) =", file.read_text("utf-8")))


def test_what_the_browser_says_by_itself(spoken):
    found = protocol.texts()
    assert (found.pop("language"), found.pop("decimal-mark")) == ("xx", ",")
    del found["parted-signs"]  # of units
    assert not {name: text for name, text in found.items() if made_up.unmarked(re.sub(r"\{\w+\}", "", text))}


def test_the_browser_has_no_words_of_its_own():
    """Each text that the scripts ask for is there, and each is asked for."""
    scripts = "".join(protocol._text(name) for name in protocol._SCRIPTS)
    asked = set(re.findall(r"say\(\"([a-z-]+)\"", scripts))
    asked |= {each for pair in re.findall(r"say\([\w.]+ \? \"([a-z-]+)\" : \"([a-z-]+)\"", scripts) for each in pair}
    assert asked == set(protocol.TEXTS)


def scripts(browser, asked):
    """What the page's own scripts write: the texts of some numbers, each with what its slider says of itself."""
    page = browser.new_page()
    try:
        code = "".join(protocol._text(name) for name in ("parts.js", "controls.js"))
        return page.evaluate(
            f"([words, asked]) => {{ {code} Object.assign(texts, words);"
            " return asked.map(([spec, value]) => shownNumber(spec, value)); }",
            [protocol.texts(), asked],
        )
    finally:
        page.close()


def sliders(id, tmp_path):
    """The sliders of a page, in both unit systems."""
    for system in ("us", "si"):
        page = open_page(id, tmp_path / system, system)
        yield from (each for each in page.controls.values() if not each.options)


@pytest.mark.browser
def test_the_browser_writes_a_number_as_the_kit_does(spoken, browser, tmp_path):
    """Each slider at each of its notches: the number in its field is the one that the kit's sentences say."""
    asked, said = [], []
    for id in ("open-out-tight-in", "the-hole-and-the-ceiling", "vent-space", "clear-night", "winter-house"):
        for control in sliders(id, tmp_path / id):
            for notch in range(control.notches + 1):
                value = float(f"{control.at(notch / control.notches):.10g}")  # as the browser moves
                asked.append([control.frame(), value])
                said.append(language.typed(control.say(value)))
    assert scripts(browser, asked) == said
    assert any("," in each for each in said)
    assert any("-" in each for each in said)
    assert not [each for each in said if made_up.points(each)]


@pytest.mark.browser
def test_english_numbers_in_the_browser(spoken, browser):
    """In English they are as Python writes them."""
    foreign, spec = language.folder(), {"log": False, "digits": 1}
    language.use(None)
    try:
        found = scripts(browser, [[spec, -7.28], [spec, -0.01], [{"log": True}, 0.0456], [{"log": True}, 57.34]])
    finally:
        language.use(foreign)
    assert found == ["-7.3", "0.0", "0.046", "57.3"]


@pytest.mark.parametrize("id", ["where-it-gets-wet", "clear-night"])
def test_a_number_is_typed_as_it_is_shown(id, spoken, tmp_path):
    """What stands in a slider's field, and what is read aloud with its unit, is taken again."""
    for control in sliders(id, tmp_path):
        for value in (control.min, control.max, control.start):
            shown = control.say(value)
            assert control.read(shown) == pytest.approx(control.rounded(value)), shown
            assert control.read(f"{shown} {control.unit}") == pytest.approx(control.rounded(value)), shown


def test_twelve_means_are_typed_as_they_are_shown(spoken, tmp_path, monkeypatch):
    """A comma between them would cut each number in two."""
    monkeypatch.chdir(tmp_path)
    page = open_page("your-roof", tmp_path, "si")
    page.hear({"kind": "desk", "key": "set:place.kind", "value": "means"})
    fields = {each["key"]: each["value"] for each in parts.typed_in(page.widget.desk["sections"])}
    before = page.draft.job.place
    for key in ("set:place.temperature", "set:place.relative_humidity"):
        page.hear({"kind": "desk", "key": key, "value": fields[key]})
    assert "," in fields["set:place.temperature"]
    assert page.draft.job.place.temperature == pytest.approx(before.temperature, abs=0.051)
    assert page.draft.job.place.relative_humidity == pytest.approx(before.relative_humidity, abs=0.0051)
