"""What it means: one verdict, in the same three parts everywhere.

How wet at worst, how long, and does it dry within the year; of that one
state, dry, damp or wet.  Lessons, checks, reports and commands are views of
it.  `findings` holds the limits with their sources and the facts, `surfaces`
which surfaces can mold; in `judgment` ``of_year``, ``of_months`` and
``of_steady`` judge what the three methods give, ``of_face`` (of many at
once ``states_of_faces``) and ``of_amount`` what a lesson works out by hand,
and `words` says it.

This room knows nothing of how a result was worked out: it reads quantities
off what it is given and holds them against limits, so the room that works
them out stands above it.
"""

from dryward.verdict.findings import (
    DAMP,
    DRY,
    LATER,
    NEVER,
    STATES,
    UNKNOWN,
    WET,
    WITHIN,
    Criterion,
    Decides,
    Finding,
    Place,
    Verdict,
    criteria,
    criterion,
    unknown,
)
from dryward.verdict.judgment import (
    of_amount,
    of_face,
    of_months,
    of_steady,
    of_year,
    states_of_faces,
    states_of_sweep,
    yearly_change,
)

__all__ = [
    "DRY",
    "DAMP",
    "WET",
    "UNKNOWN",
    "STATES",
    "Criterion",
    "criterion",
    "criteria",
    "Place",
    "Finding",
    "Decides",
    "Verdict",
    "WITHIN",
    "LATER",
    "NEVER",
    "unknown",
    "of_year",
    "yearly_change",
    "of_months",
    "of_steady",
    "states_of_sweep",
    "of_face",
    "states_of_faces",
    "of_amount",
]
