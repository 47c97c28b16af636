"""The instructor's pack: a sheet for each lesson, the pathways and the quizzes, made from the teaching data.

The files in ``lessons/guide`` that can be made are exactly what these
functions give; ``dryward lessons --write`` makes them anew.
"""

from __future__ import annotations

from collections.abc import Iterable

from dryward.checks import UnknownName
from dryward.language import listing, message
from dryward.teaching import beliefs, kinds, lessons, paper, practical, words
from dryward.teaching.lessons import Lesson
from dryward.teaching.pathways import Pathway, pathways, pretest
from dryward.teaching.progress import REVIEW
from dryward.teaching.questions import Question


def _list(items: Iterable[str]) -> list[str]:
    return [f"- {each}" for each in items] + [""]


def _said(lesson: Lesson, unit_system: str) -> list[str]:
    if len(lesson.beliefs) == len(beliefs.beliefs()):
        return _list([message("teaching.sheet-all-beliefs", count=len(lesson.beliefs))])
    found = []
    for each in map(beliefs.belief, lesson.beliefs):
        told = {"claim": each.claim, "seems": each.seems, "right": each.right, "grain": each.grain}
        text = message("teaching.sheet-belief", **told, step=each.step if each.lesson == lesson.id else 0)
        found.append(words.shown(text, unit_system))
    return _list(found)


def sheet(id: str, unit_system: str = "us") -> str:
    """The instructor's sheet of one lesson, as Markdown."""
    lesson = lessons.lesson(id, unit_system)
    note = lesson.notes
    if note is None:
        raise UnknownName("lesson with notes", id, [each.id for each in lessons.lessons() if each.notes])
    guess = lesson.prediction
    lines = [f"# {lesson.number:02d} {lesson.title}", ""]
    lines += [message("teaching.sheet-opens", minutes=lesson.minutes, question=lesson.question), ""]
    lines += _care(lesson)
    lines += [*_head("sheet-goals"), *_list(lesson.objectives)]
    lines += [*_head("sheet-ask"), *_list(note.ask)]
    lines += [*_head("sheet-prediction"), guess.prompt, ""]
    lines += [f"- **{each.key}** {each.text}" for each in guess.choices] + [""]
    lines += [message("teaching.sheet-right", key=guess.right, reveal=guess.reveal), ""]
    lines += [*_head("sheet-say"), *_said(lesson, unit_system)]
    lines += [*_head("sheet-split"), note.split, ""]
    lines += [message("teaching.sheet-move-on"), ""]
    lines += [*_head("sheet-props"), *_list(note.props)]
    lines += [*_head("sheet-traps"), *_list(note.traps)]
    lines += [*_head("sheet-more"), note.more, ""]
    lines += [*_head("sheet-home"), lesson.takeaway, "", *_care(lesson)]
    cautions = [words.caution(each) for each in lesson.cautions]
    told = [message("teaching.sheet-caution", title=each.title, text=words.shown(each.text)) for each in cautions]
    lines += [*_head("sheet-cautions"), *_list(told)]
    return "\n".join(lines)


def _care(lesson: Lesson) -> list[str]:
    """What to mind before the act that is proposed, where it is proposed."""
    return [f"**{lesson.care}**", ""] if lesson.care else []


def _head(part: str) -> list[str]:
    return [f"## {message(f'teaching.{part}')}", ""]


def _time(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    if rest:
        return message("teaching.hours-and-minutes", hours=hours, minutes=rest)
    return message("teaching.hours", count=hours)


def _way(way: Pathway) -> str:
    """For whom a way is, and how long it takes."""
    if not way.homework:
        return message("teaching.pathway", who=way.who, time=_time(way.minutes))
    home = _time(way.homework * len(way.sessions))
    return message("teaching.pathway-homework", who=way.who, time=_time(way.minutes), home=home)


def pathways_page() -> str:
    """The three pathways with their minutes, as Markdown."""
    titles = {each.id: f"{each.number:02d} {each.title}" for each in lessons.lessons()}
    lines = [f"# {message('teaching.pathways')}", "", message("teaching.pathways-intro"), ""]
    for way in pathways():
        lines += [f"## {way.title}", "", _way(way), "", message("teaching.pathway-table"), "|---|---|---|---|---|"]
        start = 0
        for each in way.sessions:
            taken = listing([titles[id] for id in each.lessons]) or message("teaching.no-lesson")
            clock = f"{start // 60}:{start % 60:02d}" if way.id == "half-day" else ""
            lines.append(f"| {clock} | {each.minutes} | {each.title} | {taken} | {each.walked or ''} |")
            start += each.minutes
        lines.append("")
    lines += [*_head("short-of-time"), message("teaching.short-of-time-cut"), ""]
    lines += [*_head("skilled-people"), message("teaching.skilled-people-pretest", count=len(pretest())), ""]
    return "\n".join(lines)


def predictions_page() -> str:
    """The handout that is filled in at home: the predictions of some lessons in short, as Markdown."""
    lines = [f"# {message('teaching.predictions')}", ""]
    lines += [message("teaching.predictions-intro"), "", message("teaching.predictions-name"), ""]
    for number, asked in enumerate((each.handout for each in lessons.lessons() if each.handout), 1):
        lines += [f"{number}. {asked}", "", f"   {message('teaching.predictions-because')}", ""]
    return "\n".join(lines)


#: What makes a quiz and its key.
_MAKE = (
    'python -c "from dryward.teaching import paper; q = paper.paper(41); '
    "open('quiz.html', 'w').write(q.quiz()); open('key.html', 'w').write(q.key())\""
)


def quiz_page() -> str:
    """How to make a quiz, each kind of question with its usual numbers, what a pass is, as Markdown."""
    asked = [kinds.draw(kind) for kind in kinds.KINDS]
    marked = listing([f"`{each.kind}`" for each in asked if not each.choices])
    letters = sum(bool(each.choices) for each in asked)
    first, second = (each.days for each in REVIEW)
    with_task = {task.lesson for task in practical.tasks()}
    titles = [f"{each.number:02d} {each.title}" for each in lessons.lessons() if each.id in with_task]
    exit_quiz = {"exit": "paper.paper(41, paper.EXIT)", "si": 'unit_system="si"', "count": len(paper.EXIT)}
    lines = [f"# {message('teaching.quizzes')}", "", *_head("quizzes-make"), message("teaching.quizzes-seed"), ""]
    lines += [message("teaching.quizzes-command", command=_MAKE), "", message("teaching.quizzes-print"), ""]
    lines += [message("teaching.quizzes-exit", **exit_quiz), "", *_head("quizzes-kinds")]
    lines += [message("teaching.quizzes-count", count=len(asked), letters=letters, marked=marked), ""]
    lines += [message("teaching.quizzes-wrong"), "", message("teaching.quizzes-table"), "|---|---|---|"]
    for each in asked:
        counts = listing(_counts(each))
        lines.append(message("teaching.quizzes-kind", kind=each.kind, prompt=each.prompt, counts=counts))
    lines += ["", *_head("quizzes-pass"), message("teaching.quizzes-passed", share=paper.pass_share()), ""]
    lines += [message("teaching.quizzes-failed"), "", *_head("quizzes-pretest")]
    lines += [message("teaching.quizzes-pretest-items", count=len(pretest())), "", *_head("quizzes-review")]
    lines += [message("teaching.quizzes-again", first=first, second=second, count=len(paper.EXIT)), ""]
    lines += [*_head("quizzes-tasks"), message("teaching.quizzes-task", lessons=listing(titles)), ""]
    return "\n".join(lines)


def _counts(question: Question) -> list[str]:
    """Whether a pass needs a kind right, and which papers it stands in."""
    found = [message("teaching.quizzes-starred")] if question.must else []
    if question.kind in paper.EXIT:
        found.append(message("teaching.quizzes-in-exit"))
    if taken := pretest().get(question.kind):
        numbers = listing([f"{lessons.lesson(id).number:02d}" for id in taken])
        found.append(message("teaching.quizzes-in-pretest", lessons=numbers))
    return found


def beliefs_page() -> str:
    """Where each belief is broken, by what, and what is left of it, as Markdown."""
    lines = [f"# {message('teaching.beliefs')}", "", message("teaching.beliefs-intro"), ""]
    lines += [message("teaching.beliefs-board"), "", message("teaching.beliefs-table"), "|---|---|---|"]
    for each in beliefs.beliefs():
        place = message("teaching.beliefs-place", number=lessons.lesson(each.lesson).number, step=each.step)
        broken = words.shown(each.broken)
        lines.append(message("teaching.beliefs-row", claim=each.claim, place=place, broken=broken))
    lines += ["", *_head("beliefs-one-by-one")]
    for each in beliefs.beliefs():
        lines += [f"### {each.number}. {each.claim}", ""]
        told = {"changed": each.changed, "survives": each.survives, "kind": each.asked}
        lines += _list(words.shown(message(f"teaching.beliefs-{name}", text=text)) for name, text in told.items())
    return "\n".join(lines)


def pages() -> dict[str, str]:
    """All pages that are made, by their place in ``lessons/guide``."""
    made = {
        "glossary.md": words.glossary_page(),
        "pathways.md": pathways_page(),
        "beliefs.md": beliefs_page(),
        "quiz.md": quiz_page(),
        "handouts/predictions.md": predictions_page(),
    }
    for each in lessons.lessons():
        if each.notes and not each.own:
            made[f"sheets/{each.number:02d}-{each.id}.md"] = sheet(each.id)
    return made
