"""The hand calculation: steps that can be redone with a pocket calculator."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Step:
    """One line of a hand calculation.

    Attributes
    ----------
    words : str
        What is worked out, in one short sentence.
    formula : str
        The sum with the numbers in it; empty where a table is read.
    result : str
        The number with its unit.

    Examples
    --------
    >>> Step("Half of it.", "40 % / 2", "20 %").line
    'Half of it. 40 % / 2 = 20 %'
    """

    words: str
    formula: str
    result: str

    @property
    def line(self):
        """The step on one line."""
        sum_ = f"{self.formula} = {self.result}" if self.formula else self.result
        return f"{self.words} {sum_}"
