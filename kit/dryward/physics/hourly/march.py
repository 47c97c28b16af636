"""The march itself: one implicit step after the other, compiled.

Every cell has two unknowns, its temperature T and its moisture potential u.
Up to 1, u is the relative humidity; above 1 the air is saturated and u - 1
counts the water that the material can no longer hold as bound water.  So
wetting to saturation and drying again is one smooth road for the solver:
each property is a straight piece of a table over u, and the last piece is
the free water.

Balances of one cell of width d over one step dt (all fluxes at the end of
the step, positive outward)::

    d/dt (w - w_old) = g_left - g_right + exchange        water [kg/(s m2)]
    d/dt (E - E_old) = q_left - q_right + exchange        heat  [W/m2]
    E = (density c + c_w w) T        T in degC, liquid water at 0 degC is 0

    g = (p_a - p_b) / Z  +  K (suction_b - suction_a)  +  air flow x vapor of the air at the face
    q = (T_a - T_b) / R  +  (L + c_v T) g_vapor  +  c_w T g_liquid  +  c air flow T at the face

Newton's method with the exact slopes (`balances`) gives 2 x 2 blocks on three
diagonals.  The accepted water and heat are those of the LAST LINEAR system,
and so are the fluxes that are handed out: they balance to rounding whatever
the tolerance of the iteration, and what the linear system missed is put
right in the next step, because w_old is that stored water, not the table's.

Air that passes two cells is, between them, as the exact solution for steady
conduction with a steady flow has it (`downstream`), so no cell is too thick.
After each step, what neither a material nor a face keeps runs off (`run_off`).

A step that does not settle is halved, down to a second.  Order of the error:
first in the step, second in the cell.

Left out: rain, gravity, storage in membranes, and the heat of freezing.
Ice for every gram that comes or goes, in summer too, would move temperatures
by 0.05 K in the root mean square and the water of a roof by 2 % at most (so
a test holds it); a winter's frost melts some hours early.
"""

import math

from dryward.physics.hourly import layout as n
from dryward.physics.hourly.balances import along, balances, fill, move_membranes, outer_surface, solve, vent_flow_at
from dryward.physics.hourly.compile import compiled, inner
from dryward.physics.hourly.layout import (
    Cells,
    Constants,
    Curves,
    Faces,
    Floats,
    Ints,
    Output,
    Paths,
    Scratch,
    State,
)  # fmt: skip

# Passes after which membranes are held where they are, after which moves are halved, after which the step is, and
# the last.
_HOLD, _HALF, _GIVE_UP, _LAST = 12, 16, 22, 40


@compiled
def march(
    first: int, last: int, forcing: Floats, constants: Constants, cells: Cells, faces: Faces, curves: Curves,
    paths: Paths, state: State, scratch: Scratch, output: Output,
) -> int:  # fmt: skip
    """Run the hours `first` to `last`; gives -1, or the cell that failed."""
    count_cells = cells.width.shape[0] - 2
    temperature, potential, water, bound, width = (
        state.temperature, state.potential, state.water, cells.bound, cells.width,
    )  # fmt: skip
    work, count, along_curve, membrane_slopes = scratch.work, scratch.counts, state.along, scratch.membrane
    face_membrane, membranes, forcing_hours = faces.membrane, curves.membrane, forcing.shape[0]
    tn, p, r, x = work[n.T_NOW], work[n.P], work[n.R], work[n.X]
    tolerance, longest, shortest = constants.tolerance, constants.step, constants.shortest
    vent_cell = paths.vent_cell
    for row in range(n.P, n.W_U + 1):
        work[row, 0] = work[row, count_cells + 1] = 0.0
    surface = ghost = temperature[count_cells]
    dt = longest
    for at in range(first, last):
        hour, given = forcing[at % forcing_hours], output.given[at - first]
        given[:] = 0.0
        vent_h = vent_g = 0.0
        if vent_cell > 0:
            flow = vent_flow_at(curves.vent_flow, temperature[vent_cell] - hour[n.T_OUT], hour[n.WIND], constants)
            given[n.VENT_FLOW] = flow
            if flow > 0.0:
                vent_h = along(constants.vent_film, flow * constants.c_air)
                vent_g = along(constants.vent_vapor, flow * constants.air_vapor)
        left = 3600.0
        while left > 1e-6:
            this = left / math.ceil(left / dt - 1e-9)
            for i in range(1, count_cells + 1):
                tn[i] = temperature[i]
                work[n.U_NOW, i] = potential[i]
            settled = False
            worst = 1
            for done in range(_LAST):
                count[n.PASSES] += 1
                fill(work, cells, curves, constants)
                surface, ghost, film = outer_surface(surface, tn[count_cells], r[count_cells], hour, constants)
                tn[0], p[0], r[0], x[0] = hour[n.T_IN], hour[n.P_IN], constants.r_in, constants.z_in
                tn[count_cells + 1], p[count_cells + 1] = ghost, hour[n.P_OUT]
                r[count_cells + 1], x[count_cells + 1] = 1.0 / film, constants.z_out
                held = done >= _HOLD
                balances(scratch, state, this, hour, constants, cells, faces, curves, paths, held, vent_h, vent_g)
                solve(work, count_cells)
                by_u, by_t, worst = largest(work, count_cells)
                if by_u < 0.0:
                    break
                settled = by_u < tolerance and by_t < 100.0 * tolerance
                if not held and not move_membranes(
                    work, face_membrane, membranes, along_curve, membrane_slopes, tolerance
                ):
                    settled = False
                if settled:
                    off = off_the_curve(work, cells.material, curves.material, constants.per_humidity)
                    if off == 0:
                        break
                    settled, worst = False, off
                step_on(work, count_cells, 1.0 if done < _HALF else 0.5)
                if done >= _GIVE_UP and this > 2.0 * shortest:
                    break  # cheaper to halve
            if not settled:
                count[n.HALVINGS] += 1
                if this <= shortest:
                    count[n.FAILED_HOUR] = at
                    return worst
                dt = 0.5 * this
                continue
            count[n.STEPS_DONE] += 1
            hand_out(given, this / 3600.0, scratch, count_cells, hour, constants, paths, vent_h, vent_g)
            accept(work, cells.capacity, constants.c_water, state)
            put_right(work, paths, hour, constants, this, width, state)
            lost, warmth = run_off(this, state, cells, output.ran_off[at // 8760], constants)
            given[n.G_OFF] += lost / 3600.0
            given[n.Q_OTHER] += warmth / 3600.0
            left -= this
            dt = min(2.0 * this, longest)
        inner_t, half, film_r = tn[count_cells], r[count_cells], r[count_cells + 1]
        given[n.T_SURFACE] = inner_t + (ghost - inner_t) * half / (half + film_r)
        for i in range(1, count_cells + 1):
            output.temperature[at - first, i - 1] = temperature[i]
            output.humidity[at - first, i - 1] = min(potential[i], 1.0)
            output.water[at - first, i - 1] = min(water[i], bound[i])
            output.free[at - first, i - 1] = max(water[i] - bound[i], 0.0) * width[i]
    return -1


@inner
def largest(work: Floats, last: int) -> tuple[float, float, int]:
    """Largest change of u, of T, and the cell with the largest; -1 for u when a number is none."""
    y0, y1 = work[n.STEP_U], work[n.STEP_T]
    by_u = by_t = most = 0.0
    worst = 1
    for i in range(1, last + 1):
        size = abs(y0[i]) + 0.01 * abs(y1[i])
        if not size < 1e300:
            return -1.0, 0.0, i
        if size > most:
            most, worst = size, i
        by_u = max(by_u, abs(y0[i]))
        by_t = max(by_t, abs(y1[i]))
    return by_u, by_t, worst


@inner
def off_the_curve(work: Floats, material: Ints, table: Floats, per_u: float) -> int:
    """The first cell in which the straight system holds other water than the curve does; 0 for none."""
    top = table.shape[1] - 1
    du = 1.0 / per_u
    un, y0, wn, w_u = work[n.U_NOW], work[n.STEP_U], work[n.W_NOW], work[n.W_U]
    for i in range(1, material.shape[0] - 1):
        new = un[i] + y0[i]
        if new <= 0.0:
            return i
        k = min(int(new * per_u), top)
        held = table[material[i], k, 0] + table[material[i], k, 1] * (new - k * du)
        if abs(held - wn[i] - w_u[i] * y0[i]) > 1e-3 * held + 1e-7:
            return i
    return 0


@inner
def step_on(work: Floats, last: int, damp: float) -> None:
    """Move the iterate, never past saturation in one go, never to no humidity at all."""
    tn, un, y0, y1 = work[n.T_NOW], work[n.U_NOW], work[n.STEP_U], work[n.STEP_T]
    for i in range(1, last + 1):
        new = un[i] + damp * y0[i]
        if un[i] < 1.0 and new > 1.0:
            new = 1.0 + 1e-12
        elif un[i] > 1.0 and new < 1.0:
            new = 1.0 - 1e-12
        elif new < 0.2 * un[i]:
            new = 0.2 * un[i]
        un[i] = new
        tn[i] += min(max(damp * y1[i], -50.0), 50.0)


@inner
def accept(work: Floats, capacity: Floats, c_water: float, state: State) -> None:
    """Keep the water and heat of the last linear system: they balance to rounding."""
    temperature, potential, water, heat = state.temperature, state.potential, state.water, state.heat
    tn, un, y0, y1 = work[n.T_NOW], work[n.U_NOW], work[n.STEP_U], work[n.STEP_T]
    wn, w_u = work[n.W_NOW], work[n.W_U]
    for i in range(1, capacity.shape[0] - 1):
        heat_c = capacity[i] + c_water * wn[i]
        water[i] = wn[i] + w_u[i] * y0[i]
        heat[i] = heat_c * (tn[i] + y1[i]) + c_water * w_u[i] * tn[i] * y0[i]
        potential[i] = un[i] + y0[i]
        temperature[i] = tn[i] + y1[i]


@inner
def hand_out(
    given: Floats, share: float, scratch: Scratch, last: int, hour: Floats, constants: Constants, paths: Paths,
    vent_h: float, vent_g: float,
) -> None:  # fmt: skip
    """Add the fluxes of the last linear system to those of the hour."""
    work, edge, vent_cell = scratch.work, scratch.edge, paths.vent_cell
    y0, y1 = work[n.STEP_U], work[n.STEP_T]
    given[n.G_IN] += share * (edge[n.IN_G] + edge[n.IN_GU] * y0[1] + edge[n.IN_GT] * y1[1])
    given[n.Q_IN] += share * (edge[n.IN_Q] + edge[n.IN_QU] * y0[1] + edge[n.IN_QT] * y1[1])
    given[n.G_OUT] += share * (edge[n.OUT_G] + edge[n.OUT_GU] * y0[last] + edge[n.OUT_GT] * y1[last])
    given[n.Q_OUT] += share * (edge[n.OUT_Q] + edge[n.OUT_QU] * y0[last] + edge[n.OUT_QT] * y1[last])
    p, p_u, p_t, tn = work[n.P], work[n.P_U], work[n.P_T], work[n.T_NOW]
    latent, c_vapor = constants.latent, constants.c_vapor
    if vent_cell > 0:
        i = vent_cell
        excess = p[i] + p_u[i] * y0[i] + p_t[i] * y1[i] - hour[n.P_OUT]
        given[n.G_VENT] += share * vent_g * excess
        given[n.Q_OTHER] += share * (
            vent_h * (tn[i] + y1[i] - hour[n.T_OUT])
            + (latent + c_vapor * tn[i]) * vent_g * excess
            + c_vapor * vent_g * (p[i] - hour[n.P_OUT]) * y1[i]
        )
    if paths.joints:
        leak_given(given, share, work, paths, hour, constants)


@inner
def leak_given(given: Floats, share: float, work: Floats, paths: Paths, hour: Floats, constants: Constants) -> None:
    """Add the water and heat that a leak brought from the room, took outdoors and left, to those of the hour."""
    runs, vent_cell = paths.runs, paths.vent_cell
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
    given[n.G_LEFT] += share * abs(seep) * constants.air_vapor * (p - seep_p)
    straight_p, straight_t = p, t
    if outward and vent_cell > 0:
        seep_p, seep_t, straight_p, straight_t = vent_p, vent_t, vent_p, vent_t
    air_vapor, c_air, latent = constants.air_vapor, constants.c_air, constants.latent
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
def _reached(work: Floats, i: int) -> tuple[float, float]:
    """Vapor pressure and temperature of a cell at the end of the step."""
    y0, y1 = work[n.STEP_U, i], work[n.STEP_T, i]
    return work[n.P, i] + work[n.P_U, i] * y0 + work[n.P_T, i] * y1, work[n.T_NOW, i] + y1


@inner
def put_right(
    work: Floats, paths: Paths, hour: Floats, constants: Constants, dt: float, width: Floats, state: State
) -> None:
    """What the last pass still changed in the leaking air that came into a cell from another one, put into its stores.

    So the books close to rounding where a tight layer lies between two runs.
    """
    runs, vent_cell = paths.runs, paths.vent_cell
    seep, latent = hour[n.SEEP], constants.latent
    if seep == 0.0:
        return
    vapor, warmth = abs(seep) * constants.air_vapor, abs(seep) * constants.c_air
    count = runs.shape[0]
    outward = seep > 0.0
    source = 0 if outward else vent_cell
    for k in range(count):
        run = k if outward else count - 1 - k
        first, last = (runs[run, 0], runs[run, 1]) if outward else (runs[run, 1], runs[run, 0])
        if source > 0:
            _put_right(work, source, first, vapor, warmth, latent, dt, width, state)
        source = last
    if outward and vent_cell > 0 and source > 0:
        _put_right(work, source, vent_cell, vapor, warmth, latent, dt, width, state)


@inner
def _put_right(
    work: Floats, source: int, into: int, vapor: float, warmth: float, latent: float, dt: float, width: Floats,
    state: State,
) -> None:  # fmt: skip
    """Give a cell what the last step of the iteration still changed in the air that comes into it."""
    warmer = work[n.STEP_T, source]
    moved = vapor * (work[n.P_U, source] * work[n.STEP_U, source] + work[n.P_T, source] * warmer)
    state.water[into] += dt * moved / width[into]
    state.heat[into] += dt * (warmth * warmer + latent * moved) / width[into]


@inner
def run_off(dt: float, state: State, cells: Cells, off: Floats, constants: Constants) -> tuple[float, float]:
    """Take away what neither material nor face keeps; gives its water [kg/m2] and its heat [J/m2].

    A material binds water up to a limit; beyond it the water is free.  Inside
    a layer free water stays up to the free saturation of the material.  At a
    face it hangs on as drops, so many grams on a square meter whatever the
    cells are like; the rest runs off: down the slope to the eave, or it drips.
    Frost stays until it melts.  The heat of melting is not in the balance of a
    cell, so a thaw is spread over the first kelvin above freezing: at a tenth
    of a kelvin a tenth of what is too much goes in an hour.
    """
    potential, temperature, water, heat = state.potential, state.temperature, state.water, state.heat
    width, bound, full, rise, beside = cells.width, cells.bound, cells.full, cells.rise, cells.beside
    keeps, c_water, free = constants.face_keeps, constants.c_water, constants.free
    all_water = all_heat = 0.0
    for i in range(1, width.shape[0] - 1):
        over = (water[i] - bound[i]) * width[i]
        if over <= 0.0 or temperature[i] <= 0.0:
            continue
        j = beside[i]
        if j < 0:
            loss = over - (full[i] - bound[i]) * width[i]
        else:
            loss = over - keeps
            if j > 0:
                other = max((water[j] - bound[j]) * width[j], 0.0)
                loss += other
                if j > i and temperature[j] > 0.0:  # each side gives its part; the second gives what is left
                    loss *= over / (over + other)
        loss = min(loss, over)
        if loss <= 0.0:
            continue
        if temperature[i] < 1.0:
            loss *= 1.0 - (1.0 - temperature[i]) ** (dt / 3600.0)
        warmth = c_water * temperature[i] * loss
        water[i] -= loss / width[i]
        heat[i] -= warmth / width[i]
        past = water[i] - full[i]
        potential[i] = 1.0 + (past / free if past > 0.0 else past / rise[i])
        off[i - 1] += loss
        all_water += loss
        all_heat += warmth
    return all_water, all_heat
