"""Gives each test file of published numbers its rows.

A file says ``TOPIC = "name"`` and writes ``def test_...(check)``: the test
runs once for each row of that topic's table, with the check computed by the
same code that ``dryward evidence`` runs.
"""

from functools import cache

import pytest

from dryward import evidence


@cache
def computed(topic):
    return {check.id: check for check in evidence.checks(topic)}


def pytest_generate_tests(metafunc):
    topic = getattr(metafunc.module, "TOPIC", None)
    if topic and "check" in metafunc.fixturenames:
        metafunc.parametrize("check", [row.id for row in evidence.read(topic)], indirect=True)


@pytest.fixture
def check(request):
    return computed(request.module.TOPIC)[request.param]
