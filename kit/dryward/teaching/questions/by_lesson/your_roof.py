"""Checks of the last lesson: direction, the wet face, and leak against diffusion, from the generator."""

from dryward.teaching.questions.by_kind.layers import line_or_water
from dryward.teaching.questions.by_kind.moving_air import leak_or_diffusion
from dryward.teaching.questions.by_kind.readings import direction

CHECKS = (direction, line_or_water, leak_or_diffusion)
