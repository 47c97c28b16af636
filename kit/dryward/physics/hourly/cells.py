"""What every cell is like at the iterate: pressures, resistances, water, and their slopes."""

import math

from dryward.physics.hourly import names as n
from dryward.physics.hourly.compile import inner


@inner
def fill(work, material, width, table, saturation, number):
    """Look up the properties of all cells."""
    top = table.shape[1] - 1
    top_t = saturation.shape[0] - 1
    cold, per_kelvin, per_u = number[n.COLD], number[n.PER_KELVIN], number[n.PER_HUMIDITY]
    suction, zero_c = number[n.SUCTION], number[n.ZERO_C]
    du = 1.0 / per_u
    tn, un, p, p_u, p_t = work[n.T_NOW], work[n.U_NOW], work[n.P], work[n.P_U], work[n.P_T]
    r, r_u, z, z_u, x, x_u, x_t = work[n.R], work[n.R_U], work[n.Z], work[n.Z_U], work[n.X], work[n.X_U], work[n.X_T]
    k_l, k_u, psi, psi_u, log_h = work[n.K], work[n.K_U], work[n.PSI], work[n.PSI_U], work[n.LOG]
    wn, w_u = work[n.W_NOW], work[n.W_U]
    for i in range(1, width.shape[0] - 1):
        u, t, m = un[i], tn[i], material[i]
        k = min(int(u * per_u), top)
        f = u - k * du
        half = 0.5 * width[i]
        wn[i] = table[m, k, 0] + table[m, k, 1] * f
        w_u[i] = table[m, k, 1]
        r[i] = half * (table[m, k, 2] + table[m, k, 3] * f)
        r_u[i] = half * table[m, k, 3]
        z[i] = half * (table[m, k, 4] + table[m, k, 5] * f)
        z_u[i] = half * table[m, k, 5]
        k_l[i] = table[m, k, 6] + table[m, k, 7] * f
        k_u[i] = table[m, k, 7]
        psi[i] = table[m, k, 8] + table[m, k, 9] * f
        psi_u[i] = table[m, k, 9]
        j = min(max(int((t - cold) * per_kelvin), 0), top_t)
        slope = saturation[j, 1]
        ps = saturation[j, 0] + slope * (t - saturation[j, 2])
        if k < top:
            p[i], p_u[i], p_t[i] = u * ps, ps, u * slope
        else:
            p[i], p_u[i], p_t[i] = ps, 0.0, slope
        if k_l[i] > 0.0:
            log_h[i] = math.log(min(u, 1.0))
            # K d(suction)/dx as vapor flux: K density R T / p beside the vapor permeability
            wet = k_l[i] * suction * (t + zero_c) / p[i]
            open_ = half / z[i] + wet
            x[i] = half / open_
            by = -x[i] / open_
            x_u[i] = by * (wet * (k_u[i] / k_l[i] - p_u[i] / p[i]) - half * z_u[i] / (z[i] * z[i]))
            x_t[i] = by * wet * (1.0 / (t + zero_c) - p_t[i] / p[i])
        else:
            x[i], x_u[i], x_t[i] = z[i], z_u[i], 0.0


@inner
def outer_surface(surface, inner_t, inner_r, hour, number):
    """Film, sun and sky at the outer surface, straightened at its own temperature.

    Gives that temperature, and the air temperature and the film that would
    do the same: flux and slope are then those of a plain film.
    """
    film, sun, sky, t_out = hour[n.FILM], hour[n.SUN], hour[n.SKY], hour[n.T_OUT]
    emit, stefan, zero_c = number[n.EMIT], number[n.STEFAN], number[n.ZERO_C]
    bound = film
    ghost = t_out + sun / film
    if emit > 0.0:
        inner = 1.0 / inner_r
        for _ in range(4):
            kelvin = surface + zero_c
            cube = emit * stefan * kelvin * kelvin * kelvin
            bound = film + 4.0 * cube
            loss = film * (surface - t_out) - sun + cube * kelvin - sky
            move = (inner * (inner_t - surface) - loss) / (inner + bound)
            ghost = surface - loss / bound
            surface += move
            if abs(move) < 1e-3:
                break
    return surface, ghost, bound


@inner
def along(surfaces, stream):
    """Conductance from the mean air of a channel to the air at its inlet.

    `surfaces`: from the air to both walls; `stream`: capacity of the flow,
    both per area.  With N = surfaces / stream the mean of the exponential is
    a share (1 - exp(-N)) / N of the way back from the walls to the inlet.
    """
    units = surfaces / stream
    if units < 1e-4:  # the differences below would be lost in rounding
        return stream * (1.0 - units / 2.0) / (0.5 - units / 6.0)
    left = (1.0 - math.exp(-units)) / units
    return surfaces * left / (1.0 - left)


@inner
def vent_flow_at(flows, warmer, wind, number):
    """Flow of vent air, between the rows (wind) and columns (warmth) of its table."""
    place = min(max((warmer - number[n.DT_FIRST]) / number[n.DT_STEP], 0.0), flows.shape[1] - 1.0)
    row = min(max(wind, 0.0), flows.shape[0] - 1.0)
    ix, iy = min(int(place), flows.shape[1] - 2), min(int(row), flows.shape[0] - 2)
    fx, fy = place - ix, row - iy
    low = (1 - fx) * flows[iy, ix] + fx * flows[iy, ix + 1]
    high = (1 - fx) * flows[iy + 1, ix] + fx * flows[iy + 1, ix + 1]
    return (1 - fy) * low + fy * high
