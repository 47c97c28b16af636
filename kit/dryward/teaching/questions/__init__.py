"""Questions: three checks for each lesson, and a generator of sixteen kinds.

The same kind and seed give the same question on every machine.  Each wrong
answer comes from a named belief or slip, and its reply says why it looked
right and what is right.  All numbers are worked by the kit's own physics.
"""

from dryward.teaching.questions.lists import checks, draw, kinds
from dryward.teaching.questions.question import Choice, Draw, Question

__all__ = ["Choice", "Question", "Draw", "checks", "draw", "kinds"]
