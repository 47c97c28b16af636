"""The three checks of a lesson: questions, the choices made, the replies."""

from dryward.teaching import questions


class Checks:
    """The checks of one lesson as they stand now.

    Parameters
    ----------
    lesson_id : str
    unit_system : {"us", "si"}
    seed : int or None
        None for the fixed numbers of the lesson; others draw new numbers.
    """

    def __init__(self, lesson_id, unit_system, seed=None):
        self.lesson_id, self.seed = lesson_id, seed
        self.chosen = {}
        self.ask(unit_system)

    def ask(self, unit_system):
        """Draw the questions, in a unit system; what was chosen stays chosen."""
        self.questions = tuple(questions.checks(self.lesson_id, self.seed, unit_system=unit_system))

    def renew(self, unit_system):
        """Draw other numbers and forget the choices."""
        self.seed = 1 if self.seed is None else self.seed + 1
        self.chosen = {}
        self.ask(unit_system)

    def answer(self, number, choice):
        """Choose an answer.

        Parameters
        ----------
        number, choice : int
            Counted from 0.

        Returns
        -------
        Choice
            Of `teaching.questions`, with its reply.
        """
        picked = self.questions[number].choices[choice]
        self.chosen[number] = choice
        return picked

    def reply(self, number):
        """What is said to the choice made: empty before one is made."""
        if number not in self.chosen:
            return ""
        picked = self.questions[number].choices[self.chosen[number]]
        return picked.reply or ("Right." if picked.right else "")

    def frame(self):
        """What the sheet needs to show them."""
        shown = []
        for number, question in enumerate(self.questions):
            chosen = self.chosen.get(number)
            shown.append(
                {
                    "prompt": question.prompt,
                    "choices": [choice.text for choice in question.choices],
                    "chosen": chosen,
                    "right": chosen is not None and question.choices[chosen].right,
                    "reply": self.reply(number),
                }
            )
        return shown
