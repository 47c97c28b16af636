"""The balances of all cells as a linear system: 2 x 2 blocks on three diagonals."""

from dryward.physics.hourly import names as n
from dryward.physics.hourly.compile import inner
from dryward.physics.hourly.faces import in_one_material, through_sheet, where_materials_touch
from dryward.physics.hourly.leaking import downstream, leak_balances


@inner
def balances(
    work, water, heat, dt, hour, number, material, width, capacity, table, saturation, face_r, face_z, face_kind,
    face_sheet, sheet_za, sheet_zb, sheets, sheet_at, sheet_of, held, vent_cell, vent_h, vent_g, face_air, runs, edge,
):  # fmt: skip
    """What each cell misses, and its slopes, into `work`; what the outermost faces carry into `edge`."""
    cells = width.shape[0] - 2
    top_t = saturation.shape[0] - 1
    cold, per_kelvin = number[n.COLD], number[n.PER_KELVIN]
    latent, c_water, c_vapor, c_air = number[n.LATENT], number[n.C_WATER], number[n.C_VAPOR], number[n.C_AIR]
    air_vapor, suction, zero_c = number[n.AIR_VAPOR], number[n.SUCTION], number[n.ZERO_C]
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
    for i in range(cells + 1):  # the face between i and i + 1
        a, b = i, i + 1
        g_left, q_left = g, q
        lta, lua, ltb, lub = gta, gua, gtb, gub
        hta, hua, htb, hub = qta, qua, qtb, qub
        kind, which = face_kind[i], face_sheet[i]
        resistance = r[a] + r[b] + face_r[i]
        per_r = 1.0 / resistance
        conduction = (tn[a] - tn[b]) * per_r
        if kind != n.DRY:
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
            vapor, by_a, by_b, by_t = through_sheet(
                i, work, x[a] + sheet_za[i], x[b] + sheet_zb[i], ps, saturation[j, 1], weight, sheets[which],
                sheet_at, sheet_of, held,
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
        if kind != n.DRY:
            if kind == n.SAME:
                liquid, ta, ua, tb, ub = in_one_material(
                    2.0 * suction / (width[a] + width[b]), mean + zero_c, tn[b] - tn[a], psi[a] - psi[b],
                    psi_u[a], psi_u[b], k_l[a], k_u[a], log_h[a], un[a], k_l[b], k_u[b], log_h[b], un[b],
                )  # fmt: skip
            else:
                liquid, ta, ua, tb, ub = where_materials_touch(
                    i, work, width, material, table, suction, zero_c, number[n.PER_HUMIDITY]
                )
            warm = c_water * mean
            g += liquid
            q += warm * liquid
            gta, gua, gtb, gub = gta + ta, gua + ua, gtb + tb, gub + ub
            qta, qua, qtb, qub = qta + warm * ta, qua + warm * ua, qtb + warm * tb, qub + warm * ub
        if seep != 0.0 and face_air[i] != n.NONE:  # air that seeps from cell to cell, in balance with both
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
    if vent_cell > 0:
        carried = latent + c_vapor * tn[vent_cell]
        _exchange(work, vent_cell, vent_g, hour[n.P_OUT], vent_h, hour[n.T_OUT], carried, c_vapor)
    if runs.shape[0] > 0 or hour[n.STRAIGHT] != 0.0:
        leak_balances(work, runs, vent_cell, hour, number)


@inner
def _exchange(work, i, by_vapor, source_p, by_warmth, source_t, carried, carried_t):
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
def solve(work, cells):
    """The steps of u and T: elimination from both ends to the middle, and back.

    Each way waits for its own last division only, so the two go side by side.
    """
    m0, m1 = work[n.M0], work[n.M1]
    d00, d01, d10, d11 = work[n.D00], work[n.D01], work[n.D10], work[n.D11]
    l00, l01, l10, l11 = work[n.L00], work[n.L01], work[n.L10], work[n.L11]
    n00, n01, n10, n11 = work[n.N00], work[n.N01], work[n.N10], work[n.N11]
    e00, e01, e10, e11 = work[n.E00], work[n.E01], work[n.E10], work[n.E11]
    y0, y1 = work[n.STEP_U], work[n.STEP_T]
    middle = (cells + 1) // 2
    # a cell is y - e x (its neighbor toward the middle); a: from inside, z: from outside
    ae00 = ae01 = ae10 = ae11 = ay0 = ay1 = 0.0
    ze00 = ze01 = ze10 = ze11 = zy0 = zy1 = 0.0
    for k in range(cells - middle):
        j = cells - k
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
    for k in range(1, cells - middle + 1):
        j = middle + k
        y0[j] -= e00[j] * y0[j - 1] + e01[j] * y1[j - 1]
        y1[j] -= e10[j] * y0[j - 1] + e11[j] * y1[j - 1]
        i = middle - k
        if i > 0:
            y0[i] -= e00[i] * y0[i + 1] + e01[i] * y1[i + 1]
            y1[i] -= e10[i] * y0[i + 1] + e11[i] * y1[i + 1]
