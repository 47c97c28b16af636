"""What stands on the first page: the ways through the lessons, and where the learner is on them."""

from dryward.teaching import lessons, pathways
from dryward.teaching.progress import Progress


def known_way(id):
    """The id of a pathway, or None for anything else.

    Examples
    --------
    >>> known_way("half-day"), known_way("no-such")
    ('half-day', None)
    """
    return id if id in [each.id for each in pathways.pathways()] else None


def order(way):
    """The lessons of a way in order, each once; all lessons without one.

    Parameters
    ----------
    way : str or None

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> order("half-day")[0]
    'read-the-air'
    """
    if way is None:
        return lessons.pages()
    found = [id for session in pathways.pathway(way).sessions for id in session.lessons]
    return tuple(dict.fromkeys(id for id in found if id in lessons.pages()))


def following(id, way):
    """The lessons before and after one, on a way.

    Parameters
    ----------
    id : str
    way : str or None

    Returns
    -------
    dict
        ``before`` and ``after``, each a dict with id and title, or None.
    """
    on = order(way) if id in order(way) else (*({id} - set(lessons.pages())), *lessons.pages())
    at = on.index(id)
    return {
        "before": _short(on[at - 1]) if at else None,
        "after": _short(on[at + 1]) if at + 1 < len(on) else None,
    }


def _short(id):
    lesson = lessons.lesson(id)
    return {"id": id, "number": lesson.number, "title": lesson.title, "minutes": lesson.minutes}


def _state(progress, id, opened):
    if progress.finished(id) is not None:
        return "finished"
    if progress.events("answer", id) or progress.prediction(id) is not None:
        return "begun"
    return "looked at" if id in opened else ""


def contents(folder, way=None):
    """What the first page says to one learner.

    Parameters
    ----------
    folder : Path
        The learner's.
    way : str, optional
        The pathway that was chosen; otherwise the one of the learner's settings.

    Returns
    -------
    dict
    """
    progress = Progress(folder)
    opened = {each["lesson"] for each in progress.events("opened")}
    chosen = known_way(way) or progress.setting("pathway")
    ways = []
    for each in pathways.pathways():
        sessions = [
            {
                "title": session.title,
                "minutes": session.minutes,
                "lessons": [
                    {**_short(id), "state": _state(progress, id, opened)}
                    for id in session.lessons
                    if id in lessons.pages()
                ],
            }
            for session in each.sessions
        ]
        ways.append(
            {"id": each.id, "title": each.title, "who": each.who, "minutes": each.minutes, "sessions": sessions}
        )
    resume = progress.resume()
    return {
        "ways": ways,
        "chosen": chosen,
        "resume": _short(resume) if opened and resume else None,
        "reviews": [_short(each.lesson) for each in progress.reviews()],
        "trouble": progress.trouble,
    }
