"""Checks of the last lesson: direction, the wet face, and leak against diffusion, from the generator."""

from dryward.teaching.kinds import direction, leak_or_diffusion, line_or_water

CHECKS = (direction, line_or_water, leak_or_diffusion)
