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

Newton's method with the exact slopes (`system`) gives 2 x 2 blocks on three
diagonals.  The accepted water and heat are those of the LAST LINEAR system,
and so are the fluxes that are handed out: they balance to rounding whatever
the tolerance of the iteration, and what the linear system missed is put
right in the next step, because w_old is that stored water, not the table's.

Air that passes two cells is, between them, as the exact solution for steady
conduction with a steady flow has it (`leaking`), so no cell is too thick.
After each step, what neither a material nor a face keeps runs off (`ceiling`).

A step that does not settle is halved, down to a second.  Order of the error:
first in the step, second in the cell.

Left out: rain, gravity, storage in membranes, and the heat of freezing.
Ice for every gram that comes or goes, in summer too, would move temperatures
by 0.05 K in the root mean square and the water of a roof by 2 % at most (so
a test holds it); a winter's frost melts some hours early.
"""

import math

import numpy as np

from dryward.physics.hourly import names as n
from dryward.physics.hourly.ceiling import run_off
from dryward.physics.hourly.cells import along, fill, outer_surface, vent_flow_at
from dryward.physics.hourly.compile import compiled
from dryward.physics.hourly.faces import move_sheets
from dryward.physics.hourly.leaking import put_right
from dryward.physics.hourly.steps import accept, hand_out, largest, off_the_curve, step_on
from dryward.physics.hourly.system import balances, solve


@compiled
def march(
    first, last, drive, number, material, width, capacity, table, saturation, face_r, face_z, face_kind,
    face_sheet, sheet_za, sheet_zb, sheets, sheet_at, sheet_of, vent_cell, vent_flow, face_air, runs, joints,
    bound, full, rise, beside, temperature, potential, water, heat, work, edge, out_t, out_u, out_w, out_free, out_off,
    out_given, count,
):  # fmt: skip
    """Run the hours `first` to `last`; gives -1, or the cell that failed.

    Cells are counted 1 to the last; 0 and one more are the airs on the two
    sides.  The state arrays are changed in place, so that a run can go on
    where it was.
    """
    cells = width.shape[0] - 2
    tn, p, r, x = work[n.T_NOW], work[n.P], work[n.R], work[n.X]
    tolerance, longest, shortest = number[n.TOLERANCE], number[n.STEP], number[n.SMALLEST]
    for row in range(n.P, n.W_U + 1):
        work[row, 0] = work[row, cells + 1] = 0.0
    surface = ghost = temperature[cells]
    dt = longest
    for at in range(first, last):
        hour, given = drive[at % drive.shape[0]], out_given[at - first]
        given[:] = 0.0
        vent_h = vent_g = 0.0
        if vent_cell > 0:
            flow = vent_flow_at(vent_flow, temperature[vent_cell] - hour[n.T_OUT], hour[n.WIND], number)
            given[n.VENT_FLOW] = flow
            if flow > 0.0:
                vent_h = along(number[n.VENT_FILM], flow * number[n.C_AIR])
                vent_g = along(number[n.VENT_VAPOR], flow * number[n.AIR_VAPOR])
        left = 3600.0
        while left > 1e-6:
            this = left / math.ceil(left / dt - 1e-9)
            for i in range(1, cells + 1):
                tn[i] = temperature[i]
                work[n.U_NOW, i] = potential[i]
            settled = False
            worst = 1
            for done in range(n.LAST):
                count[n.PASSES] += 1
                fill(work, material, width, table, saturation, number)
                surface, ghost, film = outer_surface(surface, tn[cells], r[cells], hour, number)
                tn[0], p[0], r[0], x[0] = hour[n.T_IN], hour[n.P_IN], number[n.R_IN], number[n.Z_IN]
                tn[cells + 1], p[cells + 1] = ghost, hour[n.P_OUT]
                r[cells + 1], x[cells + 1] = 1.0 / film, number[n.Z_OUT]
                held = done >= n.HOLD
                balances(
                    work, water, heat, this, hour, number, material, width, capacity, table, saturation, face_r,
                    face_z, face_kind, face_sheet, sheet_za, sheet_zb, sheets, sheet_at, sheet_of, held, vent_cell,
                    vent_h, vent_g, face_air, runs, edge,
                )  # fmt: skip
                solve(work, cells)
                by_u, by_t, worst = largest(work, cells)
                if by_u < 0.0:
                    break
                settled = by_u < tolerance and by_t < 100.0 * tolerance
                if not held and not move_sheets(work, face_sheet, sheets, sheet_at, sheet_of, tolerance):
                    settled = False
                if settled:
                    off = off_the_curve(work, material, table, number[n.PER_HUMIDITY])
                    if off == 0:
                        break
                    settled, worst = False, off
                step_on(work, cells, 1.0 if done < n.HALF else 0.5)
                if done >= n.GIVE_UP and this > 2.0 * shortest:
                    break  # cheaper to halve
            if not settled:
                count[n.HALVINGS] += 1
                if this <= shortest:
                    count[n.FAILED_HOUR] = at
                    return worst
                dt = 0.5 * this
                continue
            count[n.STEPS_DONE] += 1
            hand_out(given, this / 3600.0, work, edge, cells, hour, number, vent_cell, vent_h, vent_g, runs, joints)
            accept(work, capacity, number[n.C_WATER], temperature, potential, water, heat)
            put_right(work, runs, vent_cell, hour, number, this, width, water, heat)
            lost, warmth = run_off(
                this, potential, temperature, water, heat, width, bound, full, rise, beside, out_off[at // 8760], number
            )  # fmt: skip
            given[n.G_OFF] += lost / 3600.0
            given[n.Q_OTHER] += warmth / 3600.0
            left -= this
            dt = min(2.0 * this, longest)
        given[n.T_SURFACE] = tn[cells] + (ghost - tn[cells]) * r[cells] / (r[cells] + r[cells + 1])
        for i in range(1, cells + 1):
            out_t[at - first, i - 1] = temperature[i]
            out_u[at - first, i - 1] = min(potential[i], 1.0)
            out_w[at - first, i - 1] = min(water[i], bound[i])
            out_free[at - first, i - 1] = max(water[i] - bound[i], 0.0) * width[i]
    return -1


def scratch(cells):
    """Arrays that the march works in: of cells, of the edges, of membranes, and its counts."""
    return (
        np.zeros((n.ROWS, cells + 2)),
        np.zeros(n.EDGES),
        np.zeros((n.SHEET_ROWS, cells + 1)),
        np.zeros(n.COUNTS, np.int64),
    )
