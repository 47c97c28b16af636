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

    g = (p_a - p_b) / Z  +  K (suction_b - suction_a)  +  air flow, upwind
    q = (T_a - T_b) / R  +  (L + c_v T) g_vapor  +  c_w T g_liquid  +  c air flow T

Newton's method with the exact derivatives gives 2 x 2 blocks on three
diagonals; they are eliminated in the same pass that makes them.  The
accepted water and heat are those of the LAST LINEAR system, and so are the
fluxes that are handed out: they balance to rounding whatever the tolerance
of the iteration, and what the linear system missed is put right in the next
step, because w_old is that stored water, not the table's value.

A step that does not settle is halved.  Left out: the heat of freezing, rain,
gravity, and storage in membranes.
"""

import math

import numpy as np

from dryward.physics.hourly.compile import compiled

# Columns of the hourly series.
T_IN, P_IN, T_OUT, P_OUT, FILM, SUN, SKY, THROUGH, LEAK, WIND = range(10)
COLUMNS = 10
# Columns of what an hour gives back.
G_IN, G_OUT, G_LEAK_IN, G_LEAK_OUT, G_VENT, Q_IN, Q_OUT, Q_OTHER, VENT_FLOW, T_SURFACE = range(10)
GIVEN = 10
# Places in the list of plain numbers.
(
    STEP, EMIT, R_IN, Z_IN, Z_OUT, AIR_VAPOR, COLD, PER_KELVIN, PER_HUMIDITY, LATENT, C_WATER, C_VAPOR, C_AIR,
    SUCTION, STEFAN, ZERO_C, VENT_FILM, VENT_VAPOR, DT_FIRST, DT_STEP, TOLERANCE, SMALLEST,
) = range(22)  # fmt: skip
NUMBERS = 22
# Kinds of face, for liquid water.
DRY, SAME, CONTACT = 0, 1, 2
# Passes after which membranes are held where they are, after which moves are
# halved, and after which the step is.
HOLD, HALF, GIVE_UP = 12, 16, 22


@compiled
def march(
    first, last, drive, number, material, width, capacity, table, saturation, face_r, face_z, face_kind,
    face_sheet, sheet_za, sheet_zb, sheets, sheet_at, sheet_of, vent_cell, vent_flow, leak_cell,
    temperature, potential, water, heat, work, out_t, out_u, out_w, out_given, count,
):  # fmt: skip
    """Run the hours `first` to `last`; gives -1, or the cell that failed.

    Cells are counted 1 to n; 0 and n + 1 are the airs on the two sides.  The
    state arrays are changed in place, so that a run can go on where it was.
    `count` holds steps, iterations, halvings and the seconds into a failure.
    """
    n = width.shape[0] - 2
    hours = drive.shape[0]
    top = table.shape[1] - 1
    top_t = saturation.shape[0] - 1
    step, emit = number[STEP], number[EMIT]
    cold, per_kelvin, per_u = number[COLD], number[PER_KELVIN], number[PER_HUMIDITY]
    latent, c_water, c_vapor, c_air = number[LATENT], number[C_WATER], number[C_VAPOR], number[C_AIR]
    air_vapor, suction, stefan, zero_c = number[AIR_VAPOR], number[SUCTION], number[STEFAN], number[ZERO_C]
    tol = number[TOLERANCE]
    du = 1.0 / per_u
    T, U, W, E = temperature, potential, water, heat
    tn, un = work[0], work[1]  # the iterate
    p, p_u, p_t = work[2], work[3], work[4]
    r, r_u, z, z_u = work[5], work[6], work[7], work[8]
    k_l, k_u, psi, psi_u, log_h = work[9], work[10], work[11], work[12], work[13]
    c00, c01, c10, c11, y0, y1 = work[14], work[15], work[16], work[17], work[18], work[19]
    wn, w_u = work[20], work[21]
    x, x_u, x_t = work[22], work[23], work[24]  # vapor resistance of a half cell out of which liquid evaporates
    for c in (0, n + 1):
        for row in range(2, 25):
            work[row, c] = 0.0
    surface = T[n]
    dt = step
    for hour in range(first, last):
        now = hour % hours
        t_in, p_in, t_out, p_out = drive[now, T_IN], drive[now, P_IN], drive[now, T_OUT], drive[now, P_OUT]
        film, sun, sky = drive[now, FILM], drive[now, SUN], drive[now, SKY]
        through, leak = drive[now, THROUGH], drive[now, LEAK]
        through_out, through_back = max(through, 0.0), min(through, 0.0)
        for row in range(GIVEN):
            out_given[hour - first, row] = 0.0
        # The air in the vent space: the mean along its length, with the exact
        # exponential, is a node with these conductances to outdoor air.
        vent_h, vent_g = 0.0, 0.0
        if vent_cell > 0:
            place = (T[vent_cell] - t_out - number[DT_FIRST]) / number[DT_STEP]
            place = min(max(place, 0.0), vent_flow.shape[1] - 1.0)
            row_of = min(max(drive[now, WIND], 0.0), vent_flow.shape[0] - 1.0)
            ix, iy = min(int(place), vent_flow.shape[1] - 2), min(int(row_of), vent_flow.shape[0] - 2)
            fx, fy = place - ix, row_of - iy
            flow = (1 - fy) * ((1 - fx) * vent_flow[iy, ix] + fx * vent_flow[iy, ix + 1]) + fy * (
                (1 - fx) * vent_flow[iy + 1, ix] + fx * vent_flow[iy + 1, ix + 1]
            )
            out_given[hour - first, VENT_FLOW] = flow
            if flow > 0.0:
                vent_h = _along(number[VENT_FILM], flow * c_air)
                vent_g = _along(number[VENT_VAPOR], flow * air_vapor)
        left = 3600.0
        while left > 1e-6:
            dt = min(dt, step)
            pieces = math.ceil(left / dt - 1e-9)
            this = left / pieces
            for i in range(1, n + 1):
                tn[i] = T[i]
                un[i] = U[i]
            settled = False
            worst = 1
            for iteration in range(40):
                count[1] += 1
                # --- properties of every cell
                for i in range(1, n + 1):
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
                        p[i] = u * ps
                        p_u[i] = ps
                        p_t[i] = u * slope
                    else:
                        p[i] = ps
                        p_u[i] = 0.0
                        p_t[i] = slope
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
                # --- the airs on the two sides
                tn[0], p[0], r[0], x[0] = t_in, p_in, number[R_IN], number[Z_IN]
                # The outer surface: film, sun and sky, straightened at its own temperature.
                bound = film
                ghost = t_out + sun / film
                if emit > 0.0:
                    inner = 1.0 / r[n]
                    for _ in range(4):
                        kelvin = surface + zero_c
                        cube = emit * stefan * kelvin * kelvin * kelvin
                        bound = film + 4.0 * cube
                        loss = film * (surface - t_out) - sun + cube * kelvin - sky
                        move = (inner * (tn[n] - surface) - loss) / (inner + bound)
                        ghost = surface - loss / bound
                        surface += move
                        if abs(move) < 1e-3:
                            break
                tn[n + 1], p[n + 1], r[n + 1], x[n + 1] = ghost, p_out, 1.0 / bound, number[Z_OUT]
                # --- faces, blocks and elimination in one pass
                per_dt = 1.0 / this
                ga = gb = qa = qb = 0.0
                gta = gua = gtb = gub = qta = qua = qtb = qub = 0.0
                e00 = e01 = e10 = e11 = f0 = f1 = 0.0  # elimination of the cell before
                for i in range(n + 1):
                    # face between i and i + 1: new right-hand values
                    a, b = i, i + 1
                    g_left, q_left = gb, qb
                    lta, lua, ltb, lub = gta, gua, gtb, gub
                    hta, hua, htb, hub = qta, qua, qtb, qub
                    per_r = 1.0 / (r[a] + r[b] + face_r[i])
                    conduction = (tn[a] - tn[b]) * per_r
                    which, kind = face_sheet[i], face_kind[i]
                    if kind != DRY:
                        per_z = 1.0 / (z[a] + z[b])
                        vapor = (p[a] - p[b]) * per_z
                        gta = p_t[a] * per_z
                        gua = (p_u[a] - vapor * z_u[a]) * per_z
                        gtb = -p_t[b] * per_z
                        gub = -(p_u[b] + vapor * z_u[b]) * per_z
                    elif which < 0:
                        per_z = 1.0 / (x[a] + x[b] + face_z[i])
                        vapor = (p[a] - p[b]) * per_z
                        gta = (p_t[a] - vapor * x_t[a]) * per_z
                        gua = (p_u[a] - vapor * x_u[a]) * per_z
                        gtb = -(p_t[b] + vapor * x_t[b]) * per_z
                        gub = -(p_u[b] + vapor * x_u[b]) * per_z
                    else:
                        weight = (r[b] + 0.5 * face_r[i]) * per_r
                        t = weight * tn[a] + (1.0 - weight) * tn[b]
                        j = min(max(int((t - cold) * per_kelvin), 0), top_t)
                        ps = saturation[j, 0] + saturation[j, 1] * (t - saturation[j, 2])
                        # A point of the curve, moved along with the unknowns: on a cliff the
                        # humidity holds still and the resistance moves, elsewhere the other way.
                        along = sheet_at[i]
                        k = min(max(int(along), 0), sheets.shape[1] - 2)
                        d_mean = sheets[which, k + 1, 0] - sheets[which, k, 0]
                        d_z = sheets[which, k + 1, 1] - sheets[which, k, 1]
                        z_in, z_out = x[a] + sheet_za[i], x[b] + sheet_zb[i]
                        total = z_in + z_out + sheets[which, k, 1] + d_z * (along - k)
                        vapor = (p[a] - p[b]) / total
                        uneven = 0.5 * (z_out - z_in) / ps
                        mean_rh = 0.5 * (p[a] + p[b]) / ps + vapor * uneven
                        off = mean_rh - sheets[which, k, 0] - d_mean * (along - k)
                        opens = vapor * d_z
                        if iteration >= HOLD:  # snapping to and fro between two answers: keep this one for the step
                            opens = 0.0
                        divisor = d_mean * total + opens * uneven
                        if divisor < 0.1 * d_mean * total:  # it would snap open: leave that feedback out
                            divisor = d_mean * total
                            uneven = 0.0
                        bend = 0.5 * opens / ps
                        by_a = (d_mean - bend) / divisor
                        by_b = -(d_mean + bend) / divisor
                        by_log = opens * mean_rh / divisor
                        vapor -= opens * off / divisor
                        sheet_of[0, i], sheet_of[1, i], sheet_of[2, i] = total / divisor, uneven / divisor, off
                        sheet_of[3, i] = mean_rh * saturation[j, 1] / ps
                        sheet_of[4, i], sheet_of[5, i] = 0.5 / ps, weight
                        sheet_of[6, i] = d_mean - d_z / (total - z_in - z_out)
                        by_t = by_log * saturation[j, 1] / ps
                        gta = by_a * (p_t[a] - vapor * x_t[a]) + by_t * weight
                        gua = by_a * (p_u[a] - vapor * x_u[a])
                        gtb = by_b * (p_t[b] + vapor * x_t[b]) + by_t * (1.0 - weight)
                        gub = by_b * (p_u[b] + vapor * x_u[b])
                    mean = 0.5 * (tn[a] + tn[b])
                    carried = latent + c_vapor * mean
                    gb = vapor
                    qb = conduction + carried * vapor
                    qta = per_r + carried * gta + 0.5 * c_vapor * vapor
                    qtb = -per_r + carried * gtb + 0.5 * c_vapor * vapor
                    qua = carried * gua - conduction * per_r * r_u[a]
                    qub = carried * gub - conduction * per_r * r_u[b]
                    if kind != DRY:
                        # suction = -density R T ln(u): its gradient has a part by humidity and one by warmth
                        liquid = lta_ = lua_ = ltb_ = lub_ = 0.0
                        colder = tn[b] - tn[a]
                        kelvin = mean + zero_c
                        if kind == SAME:
                            # psi is the integral of K / u: exact in one material however steep K is
                            span = 2.0 * suction / (width[a] + width[b])
                            pull = 0.0
                            if k_l[a] > 0.0:
                                pull += 0.5 * k_l[a] * log_h[a]
                                if p_u[a] > 0.0:
                                    lua_ = -span * 0.5 * colder * (k_u[a] * log_h[a] + k_l[a] / un[a])
                            if k_l[b] > 0.0:
                                pull += 0.5 * k_l[b] * log_h[b]
                                if p_u[b] > 0.0:
                                    lub_ = -span * 0.5 * colder * (k_u[b] * log_h[b] + k_l[b] / un[b])
                            fall = psi[a] - psi[b]
                            liquid = span * (kelvin * fall - pull * colder)
                            lta_ = span * (0.5 * fall + pull)
                            ltb_ = span * (0.5 * fall - pull)
                            lua_ += span * kelvin * psi_u[a]
                            lub_ -= span * kelvin * psi_u[b]
                        else:
                            # two materials that touch: the humidity of the face lets as much in as out
                            side_a, side_b = 2.0 / width[a], 2.0 / width[b]
                            low, high = min(un[a], un[b], 1.0), min(max(un[a], un[b]), 1.0)
                            at_a = at_b = from_a = 0.0
                            middle = 0.5 * (low + high)
                            for _ in range(50):
                                k = min(int(middle * per_u), top)
                                f = middle - k * du
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
                            if steep > 0.0:
                                liquid = suction * kelvin * from_a
                                lta_ = ltb_ = 0.5 * suction * from_a
                                lua_ = suction * kelvin * side_a * psi_u[a] * side_b * at_b / steep
                                lub_ = -suction * kelvin * side_b * psi_u[b] * side_a * at_a / steep
                        warm = c_water * mean
                        gb += liquid
                        gta += lta_
                        gua += lua_
                        gtb += ltb_
                        gub += lub_
                        qb += warm * liquid
                        qta += warm * lta_
                        qua += warm * lua_
                        qtb += warm * ltb_
                        qub += warm * lub_
                    if through != 0.0:
                        up, back = through_out * air_vapor, through_back * air_vapor
                        moved = up * p[a] + back * p[b]
                        gb += moved
                        gta += up * p_t[a]
                        gua += up * p_u[a]
                        gtb += back * p_t[b]
                        gub += back * p_u[b]
                        qb += c_air * (through_out * tn[a] + through_back * tn[b]) + latent * moved
                        qta += c_air * through_out + latent * up * p_t[a]
                        qua += latent * up * p_u[a]
                        qtb += c_air * through_back + latent * back * p_t[b]
                        qub += latent * back * p_u[b]
                    if i == 0:
                        ga, qa = gb, qb
                        in_t, in_u, in_qt, in_qu = gtb, gub, qtb, qub
                        continue
                    # cell i between the face before (g_left) and this one
                    store = width[i] * per_dt
                    t, w = tn[i], wn[i]
                    heat_c = capacity[i] + c_water * w
                    m0 = store * (w - W[i]) - g_left + gb
                    m1 = store * (heat_c * t - E[i]) - q_left + qb
                    d00 = store * w_u[i] - lub + gua  # water by u
                    d01 = gta - ltb  # water by T
                    d10 = store * c_water * w_u[i] * t - hub + qua
                    d11 = store * heat_c - htb + qta
                    if i == vent_cell:
                        carried = latent + c_vapor * t
                        moved = vent_g * (p_out - p[i])
                        m0 -= moved
                        m1 -= vent_h * (t_out - t) + carried * moved
                        d00 += vent_g * p_u[i]
                        d01 += vent_g * p_t[i]
                        d10 += carried * vent_g * p_u[i]
                        d11 += vent_h + carried * vent_g * p_t[i] - c_vapor * moved
                    if i == leak_cell and leak != 0.0:
                        amount = abs(leak)
                        flow = amount * air_vapor
                        source_p, source_t = (p_in, t_in) if leak > 0.0 else (p_out, t_out)
                        m0 -= flow * (source_p - p[i])
                        m1 -= amount * c_air * (source_t - t) + latent * flow * (source_p - p[i])
                        d00 += flow * p_u[i]
                        d01 += flow * p_t[i]
                        d10 += latent * flow * p_u[i]
                        d11 += amount * c_air + latent * flow * p_t[i]
                    if i > 1:
                        # rows of the cell before: x(i-1) = f - e x(i); its weight here is minus the left face
                        d00 += lua * e00 + lta * e10
                        d01 += lua * e01 + lta * e11
                        d10 += hua * e00 + hta * e10
                        d11 += hua * e01 + hta * e11
                        m0 -= lua * f0 + lta * f1
                        m1 -= hua * f0 + hta * f1
                    per = 1.0 / (d00 * d11 - d01 * d10)
                    i00, i01, i10, i11 = d11 * per, -d01 * per, -d10 * per, d00 * per
                    e00 = i00 * gub + i01 * qub
                    e01 = i00 * gtb + i01 * qtb
                    e10 = i10 * gub + i11 * qub
                    e11 = i10 * gtb + i11 * qtb
                    f0 = -(i00 * m0 + i01 * m1)
                    f1 = -(i10 * m0 + i11 * m1)
                    c00[i], c01[i], c10[i], c11[i], y0[i], y1[i] = e00, e01, e10, e11, f0, f1
                # --- back substitution: the step of u in y0, of T in y1
                biggest_u = biggest_t = 0.0
                damp = 1.0 if iteration < HALF else 0.5
                for i in range(n, 0, -1):
                    if i < n:
                        y0[i] -= c00[i] * y0[i + 1] + c01[i] * y1[i + 1]
                        y1[i] -= c10[i] * y0[i + 1] + c11[i] * y1[i + 1]
                for i in range(1, n + 1):
                    change_u, change_t = y0[i], y1[i]
                    size = abs(change_u) + 0.01 * abs(change_t)
                    if not size < 1e300:
                        biggest_u = 1e300
                        worst = i
                        break
                    if size > biggest_u + 0.01 * biggest_t:
                        worst = i
                    biggest_u = max(biggest_u, abs(change_u))
                    biggest_t = max(biggest_t, abs(change_t))
                if biggest_u >= 1e300:
                    break
                settled = biggest_u < tol and biggest_t < 100.0 * tol
                for i in range(n + 1):
                    if face_sheet[i] >= 0 and iteration < HOLD:
                        a, b = i, i + 1
                        rise_a = rise_b = warm_a = warm_b = 0.0
                        if a > 0:
                            rise_a, warm_a = p_u[a] * y0[a] + p_t[a] * y1[a], y1[a]
                        if b <= n:
                            rise_b, warm_b = p_u[b] * y0[b] + p_t[b] * y1[b], y1[b]
                        warm = sheet_of[5, i] * warm_a + (1.0 - sheet_of[5, i]) * warm_b
                        moist = sheet_of[2, i] + sheet_of[4, i] * (rise_a + rise_b) - sheet_of[3, i] * warm
                        move = sheet_of[0, i] * moist + sheet_of[1, i] * (rise_a - rise_b)
                        move = min(max(move, -0.2 * sheets.shape[1]), 0.2 * sheets.shape[1])
                        sheet_at[i] = min(max(sheet_at[i] + move, 0.0), sheets.shape[1] - 1.0)
                        if abs(move) * sheet_of[6, i] > 10.0 * tol:
                            settled = False
                if settled:
                    # What the straight system holds must be what the curve holds, or nearly.
                    for i in range(1, n + 1):
                        new = un[i] + y0[i]
                        if new <= 0.0:
                            settled = False
                            break
                        k = min(int(new * per_u), top)
                        held = table[material[i], k, 0] + table[material[i], k, 1] * (new - k * du)
                        if abs(held - wn[i] - w_u[i] * y0[i]) > 1e-3 * held + 1e-7:
                            settled = False
                            worst = i
                            break
                if settled:
                    break
                for i in range(1, n + 1):
                    new = un[i] + damp * y0[i]
                    if un[i] < 1.0 and new > 1.0:  # never past the corner in one go
                        new = 1.0 + 1e-12
                    elif un[i] > 1.0 and new < 1.0:
                        new = 1.0 - 1e-12
                    elif new < 0.2 * un[i]:
                        new = 0.2 * un[i]
                    un[i] = new
                    tn[i] += min(max(damp * y1[i], -50.0), 50.0)
                if iteration >= GIVE_UP and this > number[SMALLEST] * 2.0:
                    break  # cheaper to halve
            if not settled:
                count[2] += 1
                if this <= number[SMALLEST]:
                    count[3] = int(3600.0 - left)
                    count[4] = hour
                    return worst
                dt = 0.5 * this
                continue
            # --- accept: water, heat and fluxes of the last linear system
            count[0] += 1
            share = this / 3600.0
            given = out_given[hour - first]
            given[G_IN] += share * (ga + in_u * y0[1] + in_t * y1[1])
            given[Q_IN] += share * (qa + in_qu * y0[1] + in_qt * y1[1])
            given[G_OUT] += share * (gb + gua * y0[n] + gta * y1[n])
            given[Q_OUT] += share * (qb + qua * y0[n] + qta * y1[n])
            if vent_cell > 0:
                i = vent_cell
                t, pv = tn[i], p[i] + p_u[i] * y0[i] + p_t[i] * y1[i]
                given[G_VENT] += share * vent_g * (pv - p_out)
                carried = latent + c_vapor * t
                given[Q_OTHER] += share * (
                    vent_h * (t + y1[i] - t_out)
                    + carried * vent_g * (pv - p_out)
                    + c_vapor * vent_g * (p[i] - p_out) * y1[i]
                )
            if leak_cell > 0 and leak != 0.0:
                i = leak_cell
                flow = leak * air_vapor
                pv = p[i] + p_u[i] * y0[i] + p_t[i] * y1[i]
                source_p, source_t = (p_in, t_in) if leak > 0.0 else (p_out, t_out)
                given[G_LEAK_IN] += share * flow * (p_in if leak > 0.0 else pv)
                given[G_LEAK_OUT] += share * flow * (pv if leak > 0.0 else p_out)
                amount = abs(leak)
                given[Q_OTHER] += share * (
                    amount * c_air * (tn[i] + y1[i] - source_t) + latent * amount * air_vapor * (pv - source_p)
                )
            for i in range(1, n + 1):
                w = wn[i]
                heat_c = capacity[i] + c_water * w
                W[i] = w + w_u[i] * y0[i]
                E[i] = heat_c * tn[i] + heat_c * y1[i] + c_water * w_u[i] * tn[i] * y0[i]
                U[i] = un[i] + y0[i]
                T[i] = tn[i] + y1[i]
            left -= this
            if left > 1e-6 and dt < step:
                dt = min(2.0 * this, step)
            elif dt < step:
                dt = min(2.0 * dt, step)
        out_given[hour - first, T_SURFACE] = T[n] + (ghost - T[n]) * r[n] / (r[n] + r[n + 1])
        for i in range(1, n + 1):
            out_t[hour - first, i - 1] = T[i]
            out_u[hour - first, i - 1] = min(U[i], 1.0)
            out_w[hour - first, i - 1] = W[i]
    return -1


@compiled
def _along(surfaces, stream):
    """Conductance from the mean air of a channel to the air at its inlet.

    `surfaces`: from the air to both walls; `stream`: capacity of the flow,
    both per area.  With n = surfaces / stream the mean of the exponential is
    a share (1 - exp(-n)) / n of the way back from the walls to the inlet.
    """
    n = surfaces / stream
    if n > 500.0:
        rest = 1.0 / n
    elif n < 1e-4:
        rest = 1.0 - n / 2.0 + n * n / 6.0
        return stream * (1.0 - n / 2.0 + n * n / 6.0) / (0.5 - n / 6.0)
    else:
        rest = (1.0 - math.exp(-n)) / n
    return surfaces * rest / (1.0 - rest)


def workspace(cells):
    """Scratch rows of one run."""
    return np.zeros((25, cells + 2))
