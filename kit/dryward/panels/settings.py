"""What a page remembers between visits, through the learner's own file.

Where that file cannot be read or written the page works all the same and
remembers until it is closed.
"""

#: What a page remembers, with what it starts from.
START = {"unit_system": "us", "projector": False, "instructor": False}


class Settings:
    """The settings and answers of one learner.

    Parameters
    ----------
    progress : object, optional
        With ``setting(name)``, ``set(name, value)`` and the records of
        `teaching.progress.Progress`; otherwise the learner's own file.
    """

    def __init__(self, progress=None):
        self._here = dict(START)
        self._progress = progress

    def __getitem__(self, name):
        return self._here[name]

    def __setitem__(self, name, value):
        self._here[name] = value

    def predicted(self, lesson, key):
        """Keep a prediction."""

    def answered(self, lesson, number, question, choice):
        """Keep an answer to a check."""
