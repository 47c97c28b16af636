"""Saturation and dew point beside CoolProp and PsychroLib, each value."""

import importlib.util
import sys

import numpy as np

from dryward import air
from dryward.checks import PlainError
from dryward.cli.bench.timing import Measurement, medians
from dryward.units import KELVIN

_OURS, _THEIRS = 1_000_000, 2000


class _Missing(PlainError):
    """A peer that is not installed."""


def _psychrolib(compiled):
    """The peer with its formulas compiled, or as they are written."""
    spec = importlib.util.find_spec("psychrolib")
    if spec is None:
        raise _Missing("PsychroLib is not installed, so there is nothing to compare with; install dryward[test].")
    module = importlib.util.module_from_spec(spec)
    kept = sys.modules.get("numba")
    if not compiled:
        sys.modules["numba"] = None  # an import of it fails, and the library goes on without
    try:
        spec.loader.exec_module(module)
    finally:
        if not compiled:
            sys.modules.pop("numba")
            if kept is not None:
                sys.modules["numba"] = kept
    module.SetUnitSystem(module.SI)
    return module


def measurements():
    """Nanoseconds a value, over temperatures from -40 to 60 degC.

    Yields
    ------
    Measurement
    """
    from CoolProp.HumidAirProp import HAPropsSI

    many, few = np.linspace(-40.0, 60.0, _OURS), np.linspace(-40.0, 60.0, _THEIRS)
    kelvin, halves, pressures = few + KELVIN, np.full(_THEIRS, 0.5), np.full(_THEIRS, air.STANDARD_PRESSURE)
    plain, compiled = _psychrolib(False), _psychrolib(True)
    vectorized = np.vectorize(plain.GetSatVapPres)
    vectorized_dew = np.vectorize(plain.GetTDewPointFromRelHum)
    vapor = air.vapor_pressure(many, 0.5)
    works = {
        "saturation pressure": {
            "dryward": (lambda: air.saturation_vapor_pressure(many), _OURS),
            "CoolProp, arrays": (lambda: HAPropsSI("P_w", "T", kelvin, "R", halves * 2, "P", pressures), _THEIRS),
            "PsychroLib, one by one": (lambda: [plain.GetSatVapPres(t) for t in few], _THEIRS),
            "PsychroLib, NumPy vectorize": (lambda: vectorized(few), _THEIRS),
            "PsychroLib, compiled by Numba": (lambda: compiled.GetSatVapPres(many), _OURS),
        },
        "dew point": {
            "dryward": (lambda: air.dew_point(vapor), _OURS),
            "CoolProp, arrays": (lambda: HAPropsSI("D", "T", kelvin, "R", halves, "P", pressures), _THEIRS),
            "PsychroLib, one by one": (lambda: [plain.GetTDewPointFromRelHum(t, 0.5) for t in few], _THEIRS),
            "PsychroLib, NumPy vectorize": (lambda: vectorized_dew(few, 0.5), _THEIRS),
            "PsychroLib, compiled by Numba": (lambda: compiled.GetTDewPointFromRelHum(few, 0.5), _THEIRS),
        },
    }
    for what, rivals in works.items():
        taken = medians(*(work for work, _ in rivals.values()), repeats=5)
        each = [seconds / count * 1e9 for seconds, (_, count) in zip(taken, rivals.values(), strict=True)]
        for name, other in zip(list(rivals)[1:], each[1:], strict=True):
            aim = ("at least", 100.0, True) if name.startswith("CoolProp") else ("", None, False)
            yield Measurement(f"{what}, one of a million", each[0], "ns", name, other, *aim)
