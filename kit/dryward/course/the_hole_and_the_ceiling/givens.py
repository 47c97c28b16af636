"""What no control of this lesson moves: the room, the cold face, the piece of ceiling, the winter, the house."""

from dryward.physics.airleak import Leak
from dryward.units import DAY, to_si

#: The room, the cold face the water meets, the ceiling and the winter of this lesson.
ROOM, COLD = to_si(70.0, "degF"), to_si(20.0, "degF")
CEILING, WINTER = to_si(32.0, "ft2"), 150 * DAY
#: From the floor to the ceiling under the ridge.
HEIGHT = to_si(12.0, "ft")
#: A house to compare with: its blower-door number, its volume, the share of its leaks up there.
ACH50, VOLUME, UP_THERE = 3.0, to_si(20_000.0, "ft3"), 0.2
HOUSE = Leak.from_blower_door(ACH50, VOLUME)
