"""A ceiling on water: what a face keeps, and what runs off.

A material binds water up to a limit; beyond it the water is free.  Inside a
layer free water stays up to the free saturation of the material.  At a face
it hangs on as drops, so many grams on a square meter whatever the cells are
like; the rest runs off: down the slope to the eave, or it drips.  Frost
stays until it melts.  The heat of melting is not in the balance of a cell,
so a thaw is spread over the first kelvin above freezing: at a tenth of a
kelvin a tenth of what is too much goes in an hour.
"""

from dryward.physics.hourly import names as n
from dryward.physics.hourly.compile import inner


@inner
def run_off(dt, potential, temperature, water, heat, width, bound, full, rise, beside, off, number):
    """Take away what neither material nor face keeps; gives its water [kg/m2] and its heat [J/m2].

    `beside`: the cell behind the same face, 0 where there is none, -1 for a
    cell that lies at no face.  `rise`: slope of the last piece of its curve.
    """
    keeps, c_water, free = number[n.KEEPS], number[n.C_WATER], number[n.FREE]
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
