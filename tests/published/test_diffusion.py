"""One winter state and twelve months against printed and worked examples.

Sources: a German building-physics textbook summary (wall with temperatures,
Table 17.25), ISO 13788 and DIN 4108-3 (equations and period balance, editions
named in the rows), read in documents that quote them; the example layers were
worked by two unlike programs outside the kit (convex hull and complementarity)
that agree to five digits.  Place and way of reading of each number stand in
evidence/data/steady.csv and monthly.csv (the method of ISO 13788, clause 6, with the
climate that a public worked example prints); rows worked with the saturation formula of ISO 13788
are checked with that formula.
"""

from dryward import evidence
from dryward.evidence import diffusion
from dryward.evidence.examples import example
from dryward.physics import monthly, steady
from dryward.weather import Air, indoor


def test_the_printed_conductivity_of_the_masonry_is_a_slip():
    """Trap: the summary prints 0.21 W/(m K) for the masonry, which gives another sum than it prints."""
    row = next(row for row in evidence.read("steady") if row.id == "masonry-R")
    slipped = example("plaster d=0.015 k=0.70 mu=15 | masonry d=0.24 k=0.21 mu=10 | plaster d=0.02 k=0.87 mu=15", 0, 0)
    assert not row.check(slipped.thermal_resistance).passed


def test_the_kits_own_saturation_gives_nearly_the_same():
    """With the handbook's formula in place of ISO 13788's, case A changes by less than 1 %."""
    state = steady.profile(example("A", 0.25, 0.04), Air(20.0, 0.5), Air(-5.0, 0.8))
    row = next(row for row in evidence.read("steady") if row.id == "period-A-g")
    assert 0 < abs(state.gain / row.expected - 1) < 0.01


def test_a_retarder_in_the_right_place_keeps_it_dry():
    """Case D without its retarder gets wet: the answer "none" is not given by default."""
    open_inside = example("D", 0.25, 0.04).replace("retarder", rename="retarder")
    thin = open_inside.replace("retarder", example("retarder sd=0.01", 0, 0).layers[0])
    assert steady.profile(thin, Air(20.0, 0.5), Air(-5.0, 0.8)).wet_planes


def test_what_gathers_is_what_is_held_and_lost():
    """No water is lost or made: gains and losses add up to what is held, month by month."""
    year = diffusion._year("E4", "ISO 13788")
    held = (year.condensed - year.evaporated).sum(axis=1).cumsum()
    assert abs(held - year.held.sum(axis=1)).max() < 1e-12


def test_a_factor_on_the_excess_is_seen():
    """The 2001 edition multiplied the class limit by 1.10: the printed rows must notice that."""
    wall = example("E4", 0.13, 0.04)
    older = monthly.balance(wall, diffusion._climate(), indoor.humidity_class(3, 20.0, factor=1.1))
    row = next(row for row in evidence.read("monthly") if row.id == "held-kit-Mar")
    assert not row.check(row.in_its_unit(float(older.held[older.month.index(3)].sum()))).passed
