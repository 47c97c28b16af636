"""Jobs that the report tests share."""

from functools import cache

from dryward.building import preset
from dryward.building.job import Job, Place, Room, Tightness, Vent
from dryward.report import review

OPEN = Job(preset("vented-vault"), Place(zone="6"), tightness=Tightness(1.0), vent=Vent(), years=2)
_DAMP = Room(relative_humidity=0.55)
TIGHT = Job(preset("vented-vault-osb"), Place("demo", "very-cold"), _DAMP, Tightness(1.5), years=2)
TYPED = Job(preset("vented-vault"), Place("means", "", (-5.0,) * 6 + (15.0,) * 6, (0.8,) * 12))


@cache
def checked(job, trials=False):
    """The review of a job, made once for all tests that only read it."""
    return review(job, with_trials=trials)
