"""The messages: whole, asked for by their names and with their facts, none left over."""

import ast
from collections import defaultdict
from pathlib import Path

import pytest
from fluent.syntax import ast as ftl
from fluent.syntax import parse
from fluent.syntax.visitor import Visitor

import made_up
from dryward import language
from dryward.panels.stage import LESSON
from dryward.teaching import lessons
from package import modules, path, tree

HOME = Path(language.__file__).parent / language.ENGLISH


def catalogs():
    """Room or lesson -> its file of English messages."""
    found = {each.stem: each for each in HOME.glob("*.ftl")}
    found |= {each.parent.name: each for each in (HOME.parents[1] / "course").glob("*/en.ftl")}
    return found


class _Facts(Visitor):
    def __init__(self):
        self.names = set()

    def visit_VariableReference(self, node):
        self.names.add(node.id.name)


def entries(file):
    """Name -> the facts it takes, of all messages of a file."""
    found = {}
    for entry in parse(file.read_text(encoding="utf-8")).body:
        if isinstance(entry, ftl.Message):
            facts = _Facts()
            facts.visit(entry)
            assert entry.id.name not in found, f"{file.name}: {entry.id.name} stands twice"
            found[entry.id.name] = facts.names
    return found


def asked():
    """(place in the code, catalog, name or start of names, facts or None) of every message the code asks for."""
    for name in modules():
        own = Path(path(name)).parent.name
        for node in ast.walk(tree(name)):
            if not isinstance(node, ast.Call) or getattr(node.func, "id", getattr(node.func, "attr", "")) != "message":
                continue
            if not node.args:
                continue
            facts = None if any(k.arg is None for k in node.keywords) else {k.arg for k in node.keywords}
            for id, whole in _ids(node.args[0]):
                room, dot, rest = id.partition(".")
                yield f"{name}:{node.lineno}", room if dot else own, rest if dot else id, whole, facts


def named_checks():
    """(place, folder, start of its messages, names of wrong answers, facts told) of each check asked by its name."""
    for name in modules():
        if not name.endswith(".questions") or ".course." not in name:
            continue
        for check in ast.parse(Path(path(name)).read_text(encoding="utf-8")).body:
            calls = [n for n in ast.walk(check) if isinstance(n, ast.Call) and isinstance(n.func, ast.Attribute)]
            told = {k.arg for call in calls if call.func.attr == "tell" for k in call.keywords}
            for call in calls:
                if call.func.attr in ("ask", "ask_number"):
                    wrong = [
                        _answer(each, call.func.attr == "ask")
                        for each in call.args[0 if call.func.attr == "ask" else 3 :]
                    ]
                    place, folder = f"{name}:{call.lineno}", name.split(".")[-2]
                    yield place, folder, check.name.replace("_", "-"), wrong, told


def plays():
    """(folder, names its beats must have, those they may have) of each lesson that is played in beats."""
    for id in ("start", *lessons.pages()):
        play = lessons.module(id, "page").PAGE.play
        if play is None:
            continue
        must, may = set(), set()
        for beat in play.beats:
            start = f"beat-{beat.id}"
            must |= {f"{start}-say", f"{start}-answer"}
            may |= {f"{start}-{each}" for each in ("ask", "also", "control", "care", "yet")}
            must |= {f"{start}-{each}" for each in ("first", "second")[: len(beat.cases)] if len(beat.cases) > 1}
            for bet in beat.bets:
                if bet.name != LESSON:
                    must |= {f"{start}-{bet.name}-ask"}
                    must |= {f"{start}-{bet.name}-{spot.key}{end}" for spot in bet.spots for end in ("", "-reply")}
        yield lessons.lesson(id).folder.name, must, may


def test_a_beat_has_its_messages():
    seen = 0
    for folder, must, _ in plays():
        assert must <= set(entries(catalogs()[folder])), sorted(must - set(entries(catalogs()[folder])))
        seen += 1
    assert seen


def _answer(node, words):
    """(name, whether a message must say it) of a wrong answer as it stands in the call; a number says itself."""
    parts = [n.value for n in (node.elts if isinstance(node, ast.Tuple) else [node])[0 if words else 1 :]]
    return parts[-1], words


def _ids(node):
    """(text, whether it is the whole id) of each way an id is written in a call."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        yield node.value, True
    elif isinstance(node, ast.JoinedStr):
        first = node.values[0]
        yield (first.value if isinstance(first, ast.Constant) else ""), False
    elif isinstance(node, ast.IfExp):
        yield from _ids(node.body)
        yield from _ids(node.orelse)


@pytest.mark.parametrize("name", catalogs())
def test_a_file_is_read_whole(name):
    junk = [
        e.content.strip() for e in parse(catalogs()[name].read_text(encoding="utf-8")).body if isinstance(e, ftl.Junk)
    ]
    assert not junk, junk


def test_what_is_asked_for_is_there_with_its_facts():
    known = {name: entries(file) for name, file in catalogs().items()}
    for place, catalog, id, whole, facts in asked():
        assert catalog in known, f"{place} asks for {catalog}.{id}"
        if not whole:
            assert any(each.startswith(id) for each in known[catalog]), f"{place} asks for {catalog}.{id}..."
            continue
        assert id in known[catalog], f"{place} asks for {catalog}.{id}"
        if facts is not None:
            assert known[catalog][id] <= facts, f"{place}: {catalog}.{id} needs {known[catalog][id] - facts}"
            assert facts <= known[catalog][id], f"{place}: {catalog}.{id} does not use {facts - known[catalog][id]}"


def check_messages(known, start, wrong):
    """Messages of a check that is asked by name: (those it must have, those it may have)."""
    must = {f"{start}-ask"} | {f"{start}-{name}" for name, said in wrong if said}
    if all(said for _, said in wrong):
        must |= {f"{start}-right"}
    may = {f"{start}-why", f"{start}-hint"} | {
        f"{start}-{name}-{end}" for name, _ in wrong for end in ("reply", "seems")
    }
    return must, may & set(known)


def test_a_check_has_its_messages_and_tells_their_facts_alone():
    known = {name: entries(file) for name, file in catalogs().items()}
    checked = 0
    for place, folder, start, wrong, told in named_checks():
        must, may = check_messages(known[folder], start, wrong)
        assert must <= set(known[folder]), f"{place} lacks {sorted(must - set(known[folder]))}"
        needed = set().union(*(known[folder][id] for id in must | may))
        assert needed == told, f"{place}: not told {sorted(needed - told)}, not used {sorted(told - needed)}"
        checked += 1
    assert checked > 30


def test_nothing_is_left_over():
    used, starts = defaultdict(set), defaultdict(set)
    for name in modules():
        if name.endswith(".questions") and ".course." in name:  # where to look, which any check may say
            asks = next(each.value for each in tree(name).body if "CHECKS" in ast.unparse(each).split(" = ")[0])
            used[name.split(".")[-2]] |= {f"{each.id.replace('_', '-')}-hint" for each in asks.elts}
    for folder, must, may in plays():
        used[folder] |= must | may
    for _, folder, start, wrong, _ in named_checks():
        used[folder].update(*check_messages(entries(catalogs()[folder]), start, wrong))
    for _, catalog, id, whole, _ in asked():
        (used if whole else starts)[catalog].add(id)
    # Names that stand in tables of the code, and are asked for from there.
    written = {
        n.value
        for m in modules()
        for n in ast.walk(tree(m))
        if isinstance(n, ast.Constant) and isinstance(n.value, str)
    }
    for start in written:  # the start of such a name, as in f"july.roof-{id}"
        room, _, prefix = start.partition(".")
        if room in catalogs() and prefix.endswith("-"):
            starts[room].add(prefix)
    for name, file in catalogs().items():
        if name in ("names", "language"):
            continue
        for id in entries(file):
            known = id in used[name] or f"{name}.{id}" in written or id in written
            assert known or any(id.startswith(each) for each in starts[name]), f"{file.name}: nobody asks for {id}"


def test_another_language_is_another_folder(tmp_path):
    home = made_up.write(tmp_path / "xx")
    assert language.listed(["a", "b"]) == "a and b"
    try:
        language.use(home)
        assert made_up.unmarked(language.listed(["1", "2", "3"])) == []
        assert language.name() == "xx"
        (home / "language.ftl").write_text("listed = { $other }\n", encoding="utf-8")
        language._loaded.clear()
        assert language.listed(["1", "2"]) == "1 and 2"  # what it lacks or gets wrong is shown in English
    finally:
        language.use(None)
        language._loaded.clear()


def test_facts_are_shown_as_they_are():
    assert language.message("language.listed", first="1,5", last=2) == "1,5 and 2"
    with pytest.raises(language.MissingMessage, match="last"):
        language.message("language.listed", first="1")
    with pytest.raises(language.MissingMessage, match="no message nothing"):
        language.message("language.nothing")
