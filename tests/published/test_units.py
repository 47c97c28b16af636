"""The trade's units against printed factors.

Sources: NIST SP 811 appendix B.8 (from memory, and every factor compared with
the Pint library below), ASTM E96 for the perm, ISO 13788 for the equivalent
air layer; how each number was read stands in evidence/data/units.csv.
"""

import math

import pint
import pytest

from dryward import evidence, units

REGISTRY = pint.UnitRegistry()
#: The same unit in the words of the general library.
PINT_WORDS = {
    "ft": "foot", "in": "inch", "lb": "pound", "gr": "grain", "inHg": "inHg", "psi": "psi", "pint": "pint",
    "quart": "quart", "ft2": "foot**2", "in2": "inch**2", "ft3": "foot**3", "lb/ft3": "pound/foot**3",
    "gr/ft3": "grain/foot**3", "lb/ft2": "pound/foot**2", "gr/ft2": "grain/foot**2", "gr/lb": "grain/pound",
    "cfm": "foot**3/minute",
    "ft/min": "foot/minute", "mph": "mile/hour", "Btu/lb": "Btu_it/pound", "Btu/(lb F)": "Btu_it/pound/delta_degF",
    "R": "foot**2*delta_degF*hour/Btu_it", "Btu/(h ft2 F)": "Btu_it/hour/foot**2/delta_degF",
    "Btu in/(h ft2 F)": "Btu_it*inch/hour/foot**2/delta_degF", "Btu/(h ft2)": "Btu_it/hour/foot**2",
    "gr/ft2/day": "grain/foot**2/day", "gr/ft2/h": "grain/foot**2/hour", "lb/day": "pound/day",
    "ft3/lb": "foot**3/pound", "perm": "grain/hour/foot**2/inHg", "perm in": "grain*inch/hour/foot**2/inHg",
    "inH2O": "inH2O", "gallon": "gallon", "fl oz": "US_fluid_ounce",
}  # fmt: skip


@pytest.mark.parametrize("name", PINT_WORDS)
def test_factor_as_in_a_general_library(name):
    theirs = REGISTRY.Quantity(1.0, PINT_WORDS[name]).to_base_units().magnitude
    # The library's conventional inches of mercury and of water are its own, a few millionths away.
    close = 2e-4 if name == "inH2O" else 1e-5 if "perm" in name or name == "inHg" else 1e-9
    theirs = theirs / 1000 if REGISTRY.Quantity(1.0, PINT_WORDS[name]).to_base_units().units == "gram" else theirs
    assert units.to_si(1.0, name) == pytest.approx(theirs, rel=close)


def test_a_perm_is_not_ten_times_what_it_is():
    """Trap: class I printed as up to 57 ng, which is one whole perm; 0.1 perm is 5.72 ng."""
    row = next(row for row in evidence.read("units") if row.id == "perm-0.1")
    assert not row.check(57.0).passed


def test_perm_inches_divide_by_the_thickness():
    """Trap: concrete of 3.2 perm-inch quoted beside 1.25 perm at 4 inches; it would be 0.8 perm."""
    four_inches = units.from_si(units.to_si(3.2, "perm in") / units.to_si(4.0, "in"), "perm")
    assert four_inches == pytest.approx(0.8)
    assert four_inches != pytest.approx(1.25, rel=0.3)


def test_the_constant_of_radiation_follows_from_the_exact_ones():
    """2 pi^5 k^4 / (15 h^3 c^2), with k, h and c as the SI defines them since 2019 (SI brochure, from memory)."""
    k, h, c = 1.380649e-23, 6.62607015e-34, 299792458.0
    assert pytest.approx(2 * math.pi**5 * k**4 / (15 * h**3 * c**2), rel=1e-14) == units.STEFAN_BOLTZMANN
