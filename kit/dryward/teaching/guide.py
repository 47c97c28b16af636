"""The instructor's pack: a sheet for each lesson and the table of pathways, made from the teaching data.

The files in ``lessons/guide`` that can be made are exactly what these
functions give; ``dryward lessons --write`` makes them anew.
"""

from __future__ import annotations

from collections.abc import Iterable

from dryward.checks import UnknownName
from dryward.teaching import beliefs, lessons, words
from dryward.teaching.lessons import Lesson
from dryward.teaching.pathways import Pathway, pathways


def _list(items: Iterable[str]) -> list[str]:
    return [f"- {each}" for each in items] + [""]


def _said(lesson: Lesson, unit_system: str) -> list[str]:
    if len(lesson.beliefs) == len(beliefs.beliefs()):
        return ["- All twenty-six beliefs can come back here. Name the one you hear, and ask for a number.", ""]
    found = []
    for each in map(beliefs.belief, lesson.beliefs):
        text = f'- "{each.claim}" {each.seems} *Right is:* {each.right} *Grant them:* {each.grain}'
        found.append(words.shown(text, unit_system))
    return [*found, ""]


def sheet(id: str, unit_system: str = "us") -> str:
    """The instructor's sheet of one lesson, as Markdown."""
    lesson = lessons.lesson(id, unit_system)
    note = lesson.notes
    if note is None:
        raise UnknownName("lesson with notes", id, [each.id for each in lessons.lessons() if each.notes])
    guess = lesson.prediction
    lines = [f"# {lesson.number:02d} {lesson.title}", ""]
    lines += [f"*{lesson.minutes} minutes. Opens with:* {lesson.question}", ""]
    lines += ["## Goals", "", *_list(lesson.objectives)]
    lines += ["## Ask first", "", *_list(note.ask)]
    lines += ["## The prediction", "", guess.prompt, ""]
    lines += [f"- **{each.key}** {each.text}" for each in guess.choices] + [""]
    lines += [f"Right is **{guess.right}**. {guess.reveal}", ""]
    lines += ["## What they will say", "", *_said(lesson, unit_system)]
    lines += ["## If the vote splits", "", note.split, ""]
    lines += ["With nine of ten right, move on.", ""]
    lines += ["## Props", "", *_list(note.props)]
    lines += ["## Traps", "", *_list(note.traps)]
    lines += ["## One more", "", note.more, ""]
    lines += ["## Take home", "", lesson.takeaway, ""]
    cautions = map(words.caution, lesson.cautions)
    lines += ["## Cautions", "", *(f"- **{each.title}.** {each.text}" for each in cautions), ""]
    return "\n".join(lines)


def _time(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest} min" if rest else f"{hours} hours"


def _homework(way: Pathway) -> str:
    return f" in class and {_time(way.homework * len(way.sessions))} at home" if way.homework else ""


def pathways_page() -> str:
    """The three pathways with their minutes, as Markdown."""
    titles = {each.id: f"{each.number:02d} {each.title}" for each in lessons.lessons()}
    lines = ["# Pathways", "", "Three ways through the lessons. Any lesson also opens alone.", ""]
    for way in pathways():
        lines += [f"## {way.title}", "", f"{way.who} In all {_time(way.minutes)}{_homework(way)}.", ""]
        lines += ["| from | minutes | what | lessons |", "|---|---|---|---|"]
        start = 0
        for each in way.sessions:
            taken = ", ".join(titles[id] for id in each.lessons) or "none"
            clock = f"{start // 60}:{start % 60:02d}" if way.id == "half-day" else ""
            lines.append(f"| {clock} | {each.minutes} | {each.title} | {taken} |")
            start += each.minutes
        lines.append("")
    lines += [
        "## Short of time",
        "",
        "Cut the clear night first, then which face goes in, then inside the film. Never cut a prediction.",
        "",
        "## Skilled people",
        "",
        "Give them the ten-item pre-test. It names the lessons they can skip.",
        "",
    ]
    return "\n".join(lines)


def predictions_page() -> str:
    """The handout that is filled in at home: the predictions of some lessons in short, as Markdown."""
    lines = ["# Say it before you see it", ""]
    lines += ["Write your answer and one reason. No computer is needed. Bring it to the next meeting.", ""]
    lines += ["Name: ______________________", ""]
    for number, asked in enumerate((each.handout for each in lessons.lessons() if each.handout), 1):
        lines += [f"{number}. {asked}", "", "   Because: ______________________________________________", ""]
    return "\n".join(lines)


def pages() -> dict[str, str]:
    """All pages that are made, by their place in ``lessons/guide``."""
    made = {
        "glossary.md": words.glossary_page(),
        "pathways.md": pathways_page(),
        "handouts/predictions.md": predictions_page(),
    }
    for each in lessons.lessons():
        if each.notes and not each.own:
            made[f"sheets/{each.number:02d}-{each.id}.md"] = sheet(each.id)
    return made
