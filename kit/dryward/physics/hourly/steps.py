"""After a pass: is the step found, how far to go, and what is kept when it is."""

from dryward.physics.hourly import names as n
from dryward.physics.hourly.compile import inner
from dryward.physics.hourly.leaking import leak_given


@inner
def largest(work, last):
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
def off_the_curve(work, material, table, per_u):
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
def step_on(work, last, damp):
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
def accept(work, capacity, c_water, temperature, potential, water, heat):
    """Keep the water and heat of the last linear system: they balance to rounding."""
    tn, un, y0, y1 = work[n.T_NOW], work[n.U_NOW], work[n.STEP_U], work[n.STEP_T]
    wn, w_u = work[n.W_NOW], work[n.W_U]
    for i in range(1, capacity.shape[0] - 1):
        heat_c = capacity[i] + c_water * wn[i]
        water[i] = wn[i] + w_u[i] * y0[i]
        heat[i] = heat_c * (tn[i] + y1[i]) + c_water * w_u[i] * tn[i] * y0[i]
        potential[i] = un[i] + y0[i]
        temperature[i] = tn[i] + y1[i]


@inner
def hand_out(given, share, work, edge, last, hour, number, vent_cell, vent_h, vent_g, runs, joints):
    """Add the fluxes of the last linear system to those of the hour."""
    y0, y1 = work[n.STEP_U], work[n.STEP_T]
    given[n.G_IN] += share * (edge[n.IN_G] + edge[n.IN_GU] * y0[1] + edge[n.IN_GT] * y1[1])
    given[n.Q_IN] += share * (edge[n.IN_Q] + edge[n.IN_QU] * y0[1] + edge[n.IN_QT] * y1[1])
    given[n.G_OUT] += share * (edge[n.OUT_G] + edge[n.OUT_GU] * y0[last] + edge[n.OUT_GT] * y1[last])
    given[n.Q_OUT] += share * (edge[n.OUT_Q] + edge[n.OUT_QU] * y0[last] + edge[n.OUT_QT] * y1[last])
    p, p_u, p_t, tn = work[n.P], work[n.P_U], work[n.P_T], work[n.T_NOW]
    latent, c_vapor = number[n.LATENT], number[n.C_VAPOR]
    if vent_cell > 0:
        i = vent_cell
        excess = p[i] + p_u[i] * y0[i] + p_t[i] * y1[i] - hour[n.P_OUT]
        given[n.G_VENT] += share * vent_g * excess
        given[n.Q_OTHER] += share * (
            vent_h * (tn[i] + y1[i] - hour[n.T_OUT])
            + (latent + c_vapor * tn[i]) * vent_g * excess
            + c_vapor * vent_g * (p[i] - hour[n.P_OUT]) * y1[i]
        )
    if joints:
        leak_given(given, share, work, runs, vent_cell, hour, number)
