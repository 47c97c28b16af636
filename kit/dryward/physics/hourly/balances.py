"""The balances of all cells as a linear system, and its solution: one pass of Newton's method.

`fill` looks up what every cell is like at the iterate, `outer_surface` and
`vent_flow_at` what meets it; `balances` walks over the faces from the room
outward and writes what each cell misses, and the slopes of that: 2 x 2 blocks
on three diagonals.  `solve` gives the step.  Each function for a face gives
a flux and its slopes by what it depends on.

Air that leaks passes open layers from cell to cell, in balance with each, and
tight ones by their joints, unchanged.  Within open layers that touch it is
part of the fluxes at the faces; `leak_balances` has what it does where it
comes in and goes out: of a run of open cells, and of the vent space.  Where a
tight layer with cells of its own lies between two runs, the air that comes
into the next one is that of the last pass.
"""

import math

from dryward.physics.hourly import layout as n
from dryward.physics.hourly.compile import inner
from dryward.physics.hourly.layout import Cells, Constants, Curves, Faces, Floats, Ints, Paths, Scratch, State

#: A flux, and its slopes by T and u of the cell before and by T and u of the cell behind.
Slopes = tuple[float, float, float, float, float]


@inner
def fill(work: Floats, cells: Cells, curves: Curves, constants: Constants) -> None:
    """Look up the properties of all cells at the iterate: pressures, resistances, water, and their slopes."""
    material, width, table, saturation = cells.material, cells.width, curves.material, curves.saturation
    top = table.shape[1] - 1
    top_t = saturation.shape[0] - 1
    cold, per_kelvin, per_u = constants.coldest, constants.per_kelvin, constants.per_humidity
    suction, zero_c = constants.suction, constants.zero_c
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
def outer_surface(
    surface: float, inner_t: float, inner_r: float, hour: Floats, constants: Constants
) -> tuple[float, float, float]:
    """Film, sun and sky at the outer surface, straightened at its own temperature.

    Gives that temperature, and the air temperature and the film that would
    do the same: flux and slope are then those of a plain film.
    """
    film, sun, sky, t_out = hour[n.FILM], hour[n.SUN], hour[n.SKY], hour[n.T_OUT]
    emit, stefan, zero_c = constants.emittance, constants.stefan, constants.zero_c
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
def along(surfaces: float, stream: float) -> float:
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
def vent_flow_at(flows: Floats, warmer: float, wind: float, constants: Constants) -> float:
    """Flow of vent air, between the rows (wind) and columns (warmth) of its table."""
    place = min(max((warmer - constants.warmer_first) / constants.warmer_step, 0.0), flows.shape[1] - 1.0)
    row = min(max(wind, 0.0), flows.shape[0] - 1.0)
    ix, iy = min(int(place), flows.shape[1] - 2), min(int(row), flows.shape[0] - 2)
    fx, fy = place - ix, row - iy
    low = (1 - fx) * flows[iy, ix] + fx * flows[iy, ix + 1]
    high = (1 - fx) * flows[iy + 1, ix] + fx * flows[iy + 1, ix + 1]
    return (1 - fy) * low + fy * high


@inner
def in_one_material(
    span: float, kelvin: float, colder: float, fall: float, psi_ua: float, psi_ub: float,
    k_a: float, k_ua: float, log_a: float, u_a: float, k_b: float, k_ub: float, log_b: float, u_b: float,
) -> Slopes:  # fmt: skip
    """Liquid between two cells of one material, with its slopes by T and u on both sides.

    Suction is - density R T ln(u): its gradient has a part by humidity and a
    part by warmth.  `fall` is that of the integral of K / u, so the part by
    humidity is exact however steep K is; the part by warmth takes the mean of
    both cells.  Numbers, not arrays: this is the inmost loop.
    """
    by_ua, by_ub = span * kelvin * psi_ua, -span * kelvin * psi_ub
    pull = 0.0
    if k_a > 0.0:
        pull += 0.5 * k_a * log_a
        if u_a < 1.0:
            by_ua -= span * 0.5 * colder * (k_ua * log_a + k_a / u_a)
    if k_b > 0.0:
        pull += 0.5 * k_b * log_b
        if u_b < 1.0:
            by_ub -= span * 0.5 * colder * (k_ub * log_b + k_b / u_b)
    return span * (kelvin * fall - pull * colder), span * (0.5 * fall + pull), by_ua, span * (0.5 * fall - pull), by_ub


@inner
def where_materials_touch(
    i: int, work: Floats, width: Floats, material: Ints, table: Floats, suction: float, zero_c: float, per_u: float
) -> Slopes:
    """Liquid between two materials, with its slopes: the humidity of the face lets as much in as out.

    The part by warmth is left out here: it acts over two half cells only.
    """
    a, b = i, i + 1
    un, psi = work[n.U_NOW], work[n.PSI]
    kelvin = 0.5 * (work[n.T_NOW, a] + work[n.T_NOW, b]) + zero_c
    top = table.shape[1] - 1
    side_a, side_b = 2.0 / width[a], 2.0 / width[b]
    low, high = min(un[a], un[b], 1.0), min(max(un[a], un[b]), 1.0)
    middle = 0.5 * (low + high)
    at_a = at_b = from_a = 0.0
    for _ in range(50):  # Newton, halving where it would leave the bracket
        k = min(int(middle * per_u), top)
        f = middle - k / per_u
        at_a, at_b = table[material[a], k, 9], table[material[b], k, 9]
        from_a = side_a * (psi[a] - table[material[a], k, 8] - at_a * f)
        miss = from_a - side_b * (table[material[b], k, 8] + at_b * f - psi[b])
        if miss > 0.0:
            low = middle
        else:
            high = middle
        steep = side_a * at_a + side_b * at_b
        new = middle + miss / steep if steep > 0.0 else 0.5 * (low + high)
        if new <= low or new >= high:
            new = 0.5 * (low + high)
        if abs(new - middle) < 1e-13:
            break
        middle = new
    steep = side_a * at_a + side_b * at_b
    if steep <= 0.0:  # too dry on both sides for liquid
        return 0.0, 0.0, 0.0, 0.0, 0.0
    by_t = 0.5 * suction * from_a
    by_ua = suction * kelvin * side_a * work[n.PSI_U, a] * side_b * at_b / steep
    by_ub = -suction * kelvin * side_b * work[n.PSI_U, b] * side_a * at_a / steep
    return suction * kelvin * from_a, by_t, by_ua, by_t, by_ub


@inner
def through_membrane(
    i: int, work: Floats, za: float, zb: float, ps: float, slope: float, weight: float, points: Floats,
    at: Floats, slopes: Floats, held: bool,
) -> tuple[float, float, float, float]:  # fmt: skip
    """Vapor through a membrane whose resistance follows the mean humidity of its faces.

    The membrane stands at a point of its curve, and the point is one more
    unknown: on a cliff the humidity holds still and the resistance moves,
    elsewhere the other way, so that no curve is too steep.  `za` and `zb` are
    the resistances before and behind it, `ps` the saturation pressure at it.
    Gives the flux and its slopes by the two vapor pressures and by warmth.
    """
    pa, pb = work[n.P, i], work[n.P, i + 1]
    along = at[i]
    k = min(max(int(along), 0), points.shape[0] - 2)
    d_mean = points[k + 1, 0] - points[k, 0]
    d_z = points[k + 1, 1] - points[k, 1]
    own = points[k, 1] + d_z * (along - k)
    total = za + zb + own
    vapor = (pa - pb) / total
    uneven = 0.5 * (zb - za) / ps
    mean_rh = 0.5 * (pa + pb) / ps + vapor * uneven
    off = mean_rh - points[k, 0] - d_mean * (along - k)
    # `held`: it snaps to and fro between two answers; one is kept for this step.
    opens = 0.0 if held else vapor * d_z
    divisor = d_mean * total + opens * uneven
    if divisor < 0.1 * d_mean * total:  # it would snap open: leave that feedback out
        divisor = d_mean * total
        uneven = 0.0
    bend = 0.5 * opens / ps
    slopes[n.BY_RH, i], slopes[n.BY_RISE, i], slopes[n.OFF, i] = total / divisor, uneven / divisor, off
    slopes[n.BY_WARMTH, i] = mean_rh * slope / ps
    slopes[n.PER_PRESSURE, i], slopes[n.WEIGHT, i] = 0.5 / ps, weight
    slopes[n.SPAN, i] = d_mean - d_z / own
    vapor -= opens * off / divisor
    return vapor, (d_mean - bend) / divisor, -(d_mean + bend) / divisor, opens * mean_rh / divisor * slope / ps


@inner
def move_membranes(work: Floats, which: Ints, curves: Floats, at: Floats, slopes: Floats, tolerance: float) -> bool:
    """Move the membranes along their curves by the step just found; whether all have come to rest."""
    rest = True
    last = which.shape[0] - 1
    p_u, p_t, y0, y1 = work[n.P_U], work[n.P_T], work[n.STEP_U], work[n.STEP_T]
    for i in range(last + 1):
        if which[i] < 0:
            continue
        rise_a = rise_b = warm_a = warm_b = 0.0
        if i > 0:
            rise_a, warm_a = p_u[i] * y0[i] + p_t[i] * y1[i], y1[i]
        if i < last:
            rise_b, warm_b = p_u[i + 1] * y0[i + 1] + p_t[i + 1] * y1[i + 1], y1[i + 1]
        warm = slopes[n.WEIGHT, i] * warm_a + (1.0 - slopes[n.WEIGHT, i]) * warm_b
        moist = slopes[n.OFF, i] + slopes[n.PER_PRESSURE, i] * (rise_a + rise_b) - slopes[n.BY_WARMTH, i] * warm
        move = slopes[n.BY_RH, i] * moist + slopes[n.BY_RISE, i] * (rise_a - rise_b)
        most = 0.2 * curves.shape[1]
        move = min(max(move, -most), most)
        at[i] = min(max(at[i] + move, 0.0), curves.shape[1] - 1.0)
        if abs(move) * slopes[n.SPAN, i] > 10.0 * tolerance:
            rest = False
    return rest


@inner
def downstream(ratio: float) -> float:
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
def balances(
    scratch: Scratch, state: State, dt: float, hour: Floats, constants: Constants, cells: Cells, faces: Faces,
    curves: Curves, paths: Paths, held: bool, vent_h: float, vent_g: float,
) -> None:  # fmt: skip
    """What each cell misses, and its slopes, into `work`; what the outermost faces carry into `edge`.

    One walk from the room outward.  `held`: membranes stay where they are on
    their curves; `vent_h`, `vent_g`: conductances of heat and vapor from the
    vent space to outdoor air.
    """
    work, edge, water, heat = scratch.work, scratch.edge, state.water, state.heat
    width, capacity, saturation = cells.width, cells.capacity, curves.saturation
    face_r, face_z, face_liquid, face_air = faces.r, faces.z, faces.liquid, faces.air
    face_membrane, z_before, z_behind = faces.membrane, faces.z_before, faces.z_behind
    material, table, membranes = cells.material, curves.material, curves.membrane
    along_curve, membrane_slopes, per_humidity = state.along, scratch.membrane, constants.per_humidity
    last = width.shape[0] - 2
    top_t = saturation.shape[0] - 1
    cold, per_kelvin = constants.coldest, constants.per_kelvin
    latent, c_water, c_vapor, c_air = constants.latent, constants.c_water, constants.c_vapor, constants.c_air
    air_vapor, suction, zero_c = constants.air_vapor, constants.suction, constants.zero_c
    seep = hour[n.SEEP]
    seep_heat, seep_vapor = seep * c_air, seep * air_vapor
    tn, p, p_u, p_t = work[n.T_NOW], work[n.P], work[n.P_U], work[n.P_T]
    r, r_u, z, z_u, x, x_u, x_t = work[n.R], work[n.R_U], work[n.Z], work[n.Z_U], work[n.X], work[n.X_U], work[n.X_T]
    k_l, k_u, psi, psi_u, log_h = work[n.K], work[n.K_U], work[n.PSI], work[n.PSI_U], work[n.LOG]
    un, wn, w_u = work[n.U_NOW], work[n.W_NOW], work[n.W_U]
    m0, m1 = work[n.M0], work[n.M1]
    d00, d01, d10, d11 = work[n.D00], work[n.D01], work[n.D10], work[n.D11]
    l00, l01, l10, l11 = work[n.L00], work[n.L01], work[n.L10], work[n.L11]
    n00, n01, n10, n11 = work[n.N00], work[n.N01], work[n.N10], work[n.N11]
    per_dt = 1.0 / dt
    # g, q: water and heat through the face; gta ... qub: slopes by T and u of the cells before (a) and behind (b)
    g = q = gta = gua = gtb = gub = qta = qua = qtb = qub = resists = 0.0
    for i in range(last + 1):  # the face between i and i + 1
        a, b = i, i + 1
        g_left, q_left = g, q
        lta, lua, ltb, lub = gta, gua, gtb, gub
        hta, hua, htb, hub = qta, qua, qtb, qub
        kind, which = face_liquid[i], face_membrane[i]
        resistance = r[a] + r[b] + face_r[i]
        per_r = 1.0 / resistance
        conduction = (tn[a] - tn[b]) * per_r
        if kind != n.NO_LIQUID:
            resists = z[a] + z[b]
            per_z = 1.0 / resists
            vapor = (p[a] - p[b]) * per_z
            gta, gua = p_t[a] * per_z, (p_u[a] - vapor * z_u[a]) * per_z
            gtb, gub = -p_t[b] * per_z, -(p_u[b] + vapor * z_u[b]) * per_z
        elif which < 0:
            resists = x[a] + x[b] + face_z[i]
            per_z = 1.0 / resists
            vapor = (p[a] - p[b]) * per_z
            gta, gua = (p_t[a] - vapor * x_t[a]) * per_z, (p_u[a] - vapor * x_u[a]) * per_z
            gtb, gub = -(p_t[b] + vapor * x_t[b]) * per_z, -(p_u[b] + vapor * x_u[b]) * per_z
        else:
            weight = (r[b] + 0.5 * face_r[i]) * per_r
            t = weight * tn[a] + (1.0 - weight) * tn[b]
            j = min(max(int((t - cold) * per_kelvin), 0), top_t)
            ps = saturation[j, 0] + saturation[j, 1] * (t - saturation[j, 2])
            vapor, by_a, by_b, by_t = through_membrane(
                i, work, x[a] + z_before[i], x[b] + z_behind[i], ps, saturation[j, 1], weight, membranes[which],
                along_curve, membrane_slopes, held,
            )  # fmt: skip
            gta, gua = by_a * (p_t[a] - vapor * x_t[a]) + by_t * weight, by_a * (p_u[a] - vapor * x_u[a])
            gtb, gub = by_b * (p_t[b] + vapor * x_t[b]) + by_t * (1.0 - weight), by_b * (p_u[b] + vapor * x_u[b])
        mean = 0.5 * (tn[a] + tn[b])
        carried = latent + c_vapor * mean
        g = vapor
        q = conduction + carried * vapor
        qta = per_r + carried * gta + 0.5 * c_vapor * vapor
        qtb = -per_r + carried * gtb + 0.5 * c_vapor * vapor
        qua = carried * gua - conduction * per_r * r_u[a]
        qub = carried * gub - conduction * per_r * r_u[b]
        if kind != n.NO_LIQUID:
            if kind == n.ONE_MATERIAL:
                liquid, ta, ua, tb, ub = in_one_material(
                    2.0 * suction / (width[a] + width[b]), mean + zero_c, tn[b] - tn[a], psi[a] - psi[b],
                    psi_u[a], psi_u[b], k_l[a], k_u[a], log_h[a], un[a], k_l[b], k_u[b], log_h[b], un[b],
                )  # fmt: skip
            else:
                liquid, ta, ua, tb, ub = where_materials_touch(
                    i, work, width, material, table, suction, zero_c, per_humidity
                )
            warm = c_water * mean
            g += liquid
            q += warm * liquid
            gta, gua, gtb, gub = gta + ta, gua + ua, gtb + tb, gub + ub
            qta, qua, qtb, qub = qta + warm * ta, qua + warm * ua, qtb + warm * tb, qub + warm * ub
        if seep != 0.0 and face_air[i] != n.NO_AIR:  # air that seeps from cell to cell, in balance with both
            behind_t = behind_p = 0.0 if seep > 0.0 else 1.0
            if face_air[i] == n.TOUCHING:
                behind_t, behind_p = downstream(seep_heat * resistance), downstream(seep_vapor * resists)
            va, vb = seep_vapor * (1.0 - behind_p), seep_vapor * behind_p
            ha, hb = seep_heat * (1.0 - behind_t), seep_heat * behind_t
            moved = va * p[a] + vb * p[b]
            g += moved
            q += ha * tn[a] + hb * tn[b] + latent * moved
            gta, gua, gtb, gub = gta + va * p_t[a], gua + va * p_u[a], gtb + vb * p_t[b], gub + vb * p_u[b]
            qta, qua = qta + ha + latent * va * p_t[a], qua + latent * va * p_u[a]
            qtb, qub = qtb + hb + latent * vb * p_t[b], qub + latent * vb * p_u[b]
        if i == 0:
            edge[n.IN_G], edge[n.IN_GU], edge[n.IN_GT] = g, gub, gtb
            edge[n.IN_Q], edge[n.IN_QU], edge[n.IN_QT] = q, qub, qtb
            continue
        # the cell i, between the face before and this one
        store = width[i] * per_dt
        heat_c = capacity[i] + c_water * wn[i]
        m0[i] = store * (wn[i] - water[i]) - g_left + g
        m1[i] = store * (heat_c * tn[i] - heat[i]) - q_left + q
        d00[i], d01[i] = store * w_u[i] - lub + gua, gta - ltb
        d10[i], d11[i] = store * c_water * w_u[i] * tn[i] - hub + qua, store * heat_c - htb + qta
        l00[i], l01[i], l10[i], l11[i] = -lua, -lta, -hua, -hta
        n00[i], n01[i], n10[i], n11[i] = gub, gtb, qub, qtb
    edge[n.OUT_G], edge[n.OUT_GU], edge[n.OUT_GT] = g, gua, gta
    edge[n.OUT_Q], edge[n.OUT_QU], edge[n.OUT_QT] = q, qua, qta
    vent_cell = paths.vent_cell
    if vent_cell > 0:
        carried = latent + c_vapor * tn[vent_cell]
        _exchange(work, vent_cell, vent_g, hour[n.P_OUT], vent_h, hour[n.T_OUT], carried, c_vapor)
    if paths.runs.shape[0] > 0 or hour[n.STRAIGHT] != 0.0:
        leak_balances(work, paths, hour, constants)


@inner
def _exchange(
    work: Floats, i: int, by_vapor: float, source_p: float, by_warmth: float, source_t: float, carried: float,
    carried_t: float,
) -> None:  # fmt: skip
    """Air that comes into a cell from elsewhere and leaves it as the cell is."""
    p_u, p_t = work[n.P_U, i], work[n.P_T, i]
    moved = by_vapor * (source_p - work[n.P, i])
    work[n.M0, i] -= moved
    work[n.M1, i] -= by_warmth * (source_t - work[n.T_NOW, i]) + carried * moved
    work[n.D00, i] += by_vapor * p_u
    work[n.D01, i] += by_vapor * p_t
    work[n.D10, i] += carried * by_vapor * p_u
    work[n.D11, i] += by_warmth + carried * by_vapor * p_t - carried_t * moved


@inner
def leak_balances(work: Floats, paths: Paths, hour: Floats, constants: Constants) -> None:
    """What a leak adds to the balances at the ends of its runs and in the vent space."""
    runs, vent_cell = paths.runs, paths.vent_cell
    seep, straight = hour[n.SEEP], hour[n.STRAIGHT]
    latent = constants.latent
    outward = seep + straight > 0.0
    vapor, warmth = abs(seep) * constants.air_vapor, abs(seep) * constants.c_air
    all_vapor, all_warmth = abs(seep + straight) * constants.air_vapor, abs(seep + straight) * constants.c_air
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
def _comes_in(
    work: Floats, i: int, vapor: float, warmth: float, pressure: float, temperature: float, latent: float
) -> None:
    """Air that comes into a cell from where its state is known."""
    moved = vapor * pressure
    work[n.M0, i] -= moved
    work[n.M1, i] -= warmth * temperature + latent * moved


@inner
def _goes_out(work: Floats, i: int, vapor: float, warmth: float, latent: float) -> None:
    """Air that leaves a cell as the cell is."""
    moved, by_u, by_t = vapor * work[n.P, i], vapor * work[n.P_U, i], vapor * work[n.P_T, i]
    work[n.M0, i] += moved
    work[n.M1, i] += warmth * work[n.T_NOW, i] + latent * moved
    work[n.D00, i] += by_u
    work[n.D01, i] += by_t
    work[n.D10, i] += latent * by_u
    work[n.D11, i] += warmth + latent * by_t


@inner
def solve(work: Floats, last: int) -> None:
    """The steps of u and T: elimination from both ends to the middle, and back.

    Each way waits for its own last division only, so the two go side by side.
    """
    m0, m1 = work[n.M0], work[n.M1]
    d00, d01, d10, d11 = work[n.D00], work[n.D01], work[n.D10], work[n.D11]
    l00, l01, l10, l11 = work[n.L00], work[n.L01], work[n.L10], work[n.L11]
    n00, n01, n10, n11 = work[n.N00], work[n.N01], work[n.N10], work[n.N11]
    e00, e01, e10, e11 = work[n.E00], work[n.E01], work[n.E10], work[n.E11]
    y0, y1 = work[n.STEP_U], work[n.STEP_T]
    middle = (last + 1) // 2
    # a cell is y - e x (its neighbor toward the middle); a: from inside, z: from outside
    ae00 = ae01 = ae10 = ae11 = ay0 = ay1 = 0.0
    ze00 = ze01 = ze10 = ze11 = zy0 = zy1 = 0.0
    for k in range(last - middle):
        j = last - k
        a00, a01 = d00[j] - n00[j] * ze00 - n01[j] * ze10, d01[j] - n00[j] * ze01 - n01[j] * ze11
        a10, a11 = d10[j] - n10[j] * ze00 - n11[j] * ze10, d11[j] - n10[j] * ze01 - n11[j] * ze11
        b0, b1 = m0[j] + n00[j] * zy0 + n01[j] * zy1, m1[j] + n10[j] * zy0 + n11[j] * zy1
        per = 1.0 / (a00 * a11 - a01 * a10)
        ze00, ze01 = (a11 * l00[j] - a01 * l10[j]) * per, (a11 * l01[j] - a01 * l11[j]) * per
        ze10, ze11 = (a00 * l10[j] - a10 * l00[j]) * per, (a00 * l11[j] - a10 * l01[j]) * per
        zy0, zy1 = (a01 * b1 - a11 * b0) * per, (a10 * b0 - a00 * b1) * per
        e00[j], e01[j], e10[j], e11[j], y0[j], y1[j] = ze00, ze01, ze10, ze11, zy0, zy1
        i = 1 + k
        if i < middle:
            a00, a01 = d00[i] - l00[i] * ae00 - l01[i] * ae10, d01[i] - l00[i] * ae01 - l01[i] * ae11
            a10, a11 = d10[i] - l10[i] * ae00 - l11[i] * ae10, d11[i] - l10[i] * ae01 - l11[i] * ae11
            b0, b1 = m0[i] + l00[i] * ay0 + l01[i] * ay1, m1[i] + l10[i] * ay0 + l11[i] * ay1
            per = 1.0 / (a00 * a11 - a01 * a10)
            ae00, ae01 = (a11 * n00[i] - a01 * n10[i]) * per, (a11 * n01[i] - a01 * n11[i]) * per
            ae10, ae11 = (a00 * n10[i] - a10 * n00[i]) * per, (a00 * n11[i] - a10 * n01[i]) * per
            ay0, ay1 = (a01 * b1 - a11 * b0) * per, (a10 * b0 - a00 * b1) * per
            e00[i], e01[i], e10[i], e11[i], y0[i], y1[i] = ae00, ae01, ae10, ae11, ay0, ay1
    i = middle
    a00 = d00[i] - l00[i] * ae00 - l01[i] * ae10 - n00[i] * ze00 - n01[i] * ze10
    a01 = d01[i] - l00[i] * ae01 - l01[i] * ae11 - n00[i] * ze01 - n01[i] * ze11
    a10 = d10[i] - l10[i] * ae00 - l11[i] * ae10 - n10[i] * ze00 - n11[i] * ze10
    a11 = d11[i] - l10[i] * ae01 - l11[i] * ae11 - n10[i] * ze01 - n11[i] * ze11
    b0 = m0[i] + l00[i] * ay0 + l01[i] * ay1 + n00[i] * zy0 + n01[i] * zy1
    b1 = m1[i] + l10[i] * ay0 + l11[i] * ay1 + n10[i] * zy0 + n11[i] * zy1
    per = 1.0 / (a00 * a11 - a01 * a10)
    y0[i], y1[i] = (a01 * b1 - a11 * b0) * per, (a10 * b0 - a00 * b1) * per
    for k in range(1, last - middle + 1):
        j = middle + k
        y0[j] -= e00[j] * y0[j - 1] + e01[j] * y1[j - 1]
        y1[j] -= e10[j] * y0[j - 1] + e11[j] * y1[j - 1]
        i = middle - k
        if i > 0:
            y0[i] -= e00[i] * y0[i + 1] + e01[i] * y1[i + 1]
            y1[i] -= e10[i] * y0[i + 1] + e11[i] * y1[i + 1]
