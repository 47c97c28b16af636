"""Tests in turns: what is tried in many ways is tried in a few of them in every run, and in all with --slow."""

import pytest


def turn(k, ways, usual=1):
    """Those of the ways in which the k-th of all is tried now."""
    return [ways[(k * usual + j) % len(ways)] for j in range(usual)]


def in_turn(names, ways, usual=1, always=()):
    """(name, way) of all: for each name those of `always` and `usual` of the other ways in turn, the rest slow."""
    turning = [way for way in ways if way not in always]
    found = []
    for k, name in enumerate(names):
        now = turn(k, turning, usual)
        for way in ways:
            marks = () if way in always or way in now else (pytest.mark.slow,)
            found.append(pytest.param(name, way, marks=marks, id=f"{_words(name)}-{_words(way)}"))
    return found


def _words(each):
    return each if isinstance(each, str) else "-".join(str(part) for part in each if part != "")
