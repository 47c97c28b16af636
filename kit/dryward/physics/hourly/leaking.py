"""Leaking air on its way: what it brings to the cells it seeps through, and what it takes along.

Seeping air passes open layers from cell to cell, in balance with each, and
tight ones by their joints, unchanged.  Within open layers that touch it is
part of the fluxes at the faces (`system`); here is what it does where it
comes in and where it goes out: of a run of open cells, and of the vent space.

Where a tight layer with cells of its own lies between two runs, the air that
comes into the next one is that of the last pass of the iteration.  What that
misses is put right in the stored water and heat of the cell it comes into,
so the books close to rounding.
"""

from dryward.physics.hourly import names as n
from dryward.physics.hourly.compile import inner


@inner
def downstream(ratio):
    """Share of the cell behind in the air at a face [-], by what the air carries over what is conducted there.

    Air that passes between two planes that conduct is, at the face, as the
    exact solution between them has it: half of each when it is slow, all of
    the plane it comes from when it is fast.  1/x - 1/(exp(x) - 1) by its
    series up to 1, which needs no division, and by one over exp(x) beyond;
    within 1e-3 of it anywhere and 1e-6 up to 1.
    """
    x = abs(ratio)
    if x < 1.0:
        y = x * x
        share = 0.5 - x * (1.0 / 12.0 - y * (1.0 / 720.0 - y * (1.0 / 30240.0)))
    else:
        rest = 1.0 / 6.0 + x * (1.0 / 24.0 + x * (1.0 / 120.0 + x * (1.0 / 720.0)))
        share = (0.5 + x * rest) / (1.0 + x * (0.5 + x * rest))
    return share if ratio >= 0.0 else 1.0 - share


@inner
def _comes_in(work, i, vapor, warmth, pressure, temperature, latent):
    """Air that comes into a cell from where its state is known."""
    moved = vapor * pressure
    work[n.M0, i] -= moved
    work[n.M1, i] -= warmth * temperature + latent * moved


@inner
def _goes_out(work, i, vapor, warmth, latent):
    """Air that leaves a cell as the cell is."""
    moved, by_u, by_t = vapor * work[n.P, i], vapor * work[n.P_U, i], vapor * work[n.P_T, i]
    work[n.M0, i] += moved
    work[n.M1, i] += warmth * work[n.T_NOW, i] + latent * moved
    work[n.D00, i] += by_u
    work[n.D01, i] += by_t
    work[n.D10, i] += latent * by_u
    work[n.D11, i] += warmth + latent * by_t


@inner
def leak_balances(work, runs, vent_cell, hour, number):
    """What a leak adds to the balances at the ends of its runs and in the vent space."""
    seep, straight = hour[n.SEEP], hour[n.STRAIGHT]
    latent = number[n.LATENT]
    outward = seep + straight > 0.0
    vapor, warmth = abs(seep) * number[n.AIR_VAPOR], abs(seep) * number[n.C_AIR]
    all_vapor, all_warmth = abs(seep + straight) * number[n.AIR_VAPOR], abs(seep + straight) * number[n.C_AIR]
    p, t = (hour[n.P_IN], hour[n.T_IN]) if outward else (hour[n.P_OUT], hour[n.T_OUT])
    if vent_cell > 0:
        if outward:  # the straight part; the other comes from the last run
            _comes_in(work, vent_cell, all_vapor - vapor, all_warmth - warmth, p, t, latent)
        else:  # what is drawn inward is made up from outdoors
            _comes_in(work, vent_cell, all_vapor, all_warmth, p, t, latent)
            p, t = work[n.P, vent_cell], work[n.T_NOW, vent_cell]
        _goes_out(work, vent_cell, all_vapor, all_warmth, latent)
    count = runs.shape[0]
    for k in range(count):
        run = k if outward else count - 1 - k
        first, last = (runs[run, 0], runs[run, 1]) if outward else (runs[run, 1], runs[run, 0])
        _comes_in(work, first, vapor, warmth, p, t, latent)
        _goes_out(work, last, vapor, warmth, latent)
        p, t = work[n.P, last], work[n.T_NOW, last]
    if outward and vent_cell > 0:
        _comes_in(work, vent_cell, vapor, warmth, p, t, latent)


@inner
def _put_right(work, source, into, vapor, warmth, latent, dt, width, water, heat):
    """Give a cell what the last step of the iteration still changed in the air that comes into it."""
    warmer = work[n.STEP_T, source]
    moved = vapor * (work[n.P_U, source] * work[n.STEP_U, source] + work[n.P_T, source] * warmer)
    water[into] += dt * moved / width[into]
    heat[into] += dt * (warmth * warmer + latent * moved) / width[into]


@inner
def put_right(work, runs, vent_cell, hour, number, dt, width, water, heat):
    """The same for every cell that air came into from another one."""
    seep, latent = hour[n.SEEP], number[n.LATENT]
    if seep == 0.0:
        return
    vapor, warmth = abs(seep) * number[n.AIR_VAPOR], abs(seep) * number[n.C_AIR]
    count = runs.shape[0]
    outward = seep > 0.0
    source = 0 if outward else vent_cell
    for k in range(count):
        run = k if outward else count - 1 - k
        first, last = (runs[run, 0], runs[run, 1]) if outward else (runs[run, 1], runs[run, 0])
        if source > 0:
            _put_right(work, source, first, vapor, warmth, latent, dt, width, water, heat)
        source = last
    if outward and vent_cell > 0 and source > 0:
        _put_right(work, source, vent_cell, vapor, warmth, latent, dt, width, water, heat)


@inner
def leak_given(given, share, work, runs, vent_cell, hour, number):
    """Add the water and heat that a leak brought from the room, took outdoors and left, to those of the hour."""
    seep, straight = hour[n.SEEP], hour[n.STRAIGHT]
    if seep == 0.0 and straight == 0.0:
        return
    outward = seep + straight > 0.0
    # The air at the far end of each part: where it comes from, or as the last cell on its way is.
    p, t = (hour[n.P_IN], hour[n.T_IN]) if outward else (hour[n.P_OUT], hour[n.T_OUT])
    start_p, start_t = p, t
    vent_p = vent_t = 0.0
    if vent_cell > 0:
        vent_p, vent_t = _reached(work, vent_cell)
        if not outward:
            p, t = vent_p, vent_t
    seep_p, seep_t = p, t
    count = runs.shape[0]
    if count > 0:
        seep_p, seep_t = _reached(work, runs[count - 1, 1] if outward else runs[0, 0])
    given[n.G_LEFT] += share * abs(seep) * number[n.AIR_VAPOR] * (p - seep_p)
    straight_p, straight_t = p, t
    if outward and vent_cell > 0:
        seep_p, seep_t, straight_p, straight_t = vent_p, vent_t, vent_p, vent_t
    air_vapor, c_air, latent = number[n.AIR_VAPOR], number[n.C_AIR], number[n.LATENT]
    water_start, heat_start = air_vapor * start_p, c_air * start_t + latent * air_vapor * start_p
    water_seep, heat_seep = air_vapor * seep_p, c_air * seep_t + latent * air_vapor * seep_p
    water_straight, heat_straight = air_vapor * straight_p, c_air * straight_t + latent * air_vapor * straight_p
    water_end, heat_end = seep * water_seep + straight * water_straight, seep * heat_seep + straight * heat_straight
    water_start, heat_start = (seep + straight) * water_start, (seep + straight) * heat_start
    if not outward:
        water_start, water_end, heat_start, heat_end = water_end, water_start, heat_end, heat_start
    given[n.G_LEAK_IN] += share * water_start
    given[n.G_LEAK_OUT] += share * water_end
    given[n.Q_LEAK_IN] += share * heat_start
    given[n.Q_LEAK_OUT] += share * heat_end


@inner
def _reached(work, i):
    """Vapor pressure and temperature of a cell at the end of the step."""
    y0, y1 = work[n.STEP_U, i], work[n.STEP_T, i]
    return work[n.P, i] + work[n.P_U, i] * y0 + work[n.P_T, i] * y1, work[n.T_NOW, i] + y1
