"""What passes a face between two cells: through a membrane, and as liquid water.

Each function gives a flux and its slopes by what it depends on.
"""

from dryward.physics.hourly import names as n
from dryward.physics.hourly.compile import inner


@inner
def through_sheet(i, work, za, zb, ps, slope, weight, points, at, kept, held):
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
    kept[n.BY_RH, i], kept[n.BY_RISE, i], kept[n.OFF, i] = total / divisor, uneven / divisor, off
    kept[n.BY_WARMTH, i] = mean_rh * slope / ps
    kept[n.PER_PRESSURE, i], kept[n.WEIGHT, i] = 0.5 / ps, weight
    kept[n.SPAN, i] = d_mean - d_z / own
    vapor -= opens * off / divisor
    return vapor, (d_mean - bend) / divisor, -(d_mean + bend) / divisor, opens * mean_rh / divisor * slope / ps


@inner
def move_sheets(work, face_sheet, sheets, at, kept, tolerance):
    """Move the membranes along their curves by the step just found; whether all have come to rest."""
    rest = True
    last = face_sheet.shape[0] - 1
    p_u, p_t, y0, y1 = work[n.P_U], work[n.P_T], work[n.STEP_U], work[n.STEP_T]
    for i in range(last + 1):
        if face_sheet[i] < 0:
            continue
        rise_a = rise_b = warm_a = warm_b = 0.0
        if i > 0:
            rise_a, warm_a = p_u[i] * y0[i] + p_t[i] * y1[i], y1[i]
        if i < last:
            rise_b, warm_b = p_u[i + 1] * y0[i + 1] + p_t[i + 1] * y1[i + 1], y1[i + 1]
        warm = kept[n.WEIGHT, i] * warm_a + (1.0 - kept[n.WEIGHT, i]) * warm_b
        moist = kept[n.OFF, i] + kept[n.PER_PRESSURE, i] * (rise_a + rise_b) - kept[n.BY_WARMTH, i] * warm
        move = kept[n.BY_RH, i] * moist + kept[n.BY_RISE, i] * (rise_a - rise_b)
        most = 0.2 * sheets.shape[1]
        move = min(max(move, -most), most)
        at[i] = min(max(at[i] + move, 0.0), sheets.shape[1] - 1.0)
        if abs(move) * kept[n.SPAN, i] > 10.0 * tolerance:
            rest = False
    return rest


@inner
def in_one_material(span, kelvin, colder, fall, psi_ua, psi_ub, k_a, k_ua, log_a, u_a, k_b, k_ub, log_b, u_b):
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
def where_materials_touch(i, work, width, material, table, suction, zero_c, per_u):
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
