"""The places of everything in the arrays that the compiled march works on."""

# Columns of the hourly series.
T_IN, P_IN, T_OUT, P_OUT, FILM, SUN, SKY, SEEP, STRAIGHT, WIND = range(10)
COLUMNS = 10
# Columns of what an hour gives back.
(
    G_IN, G_OUT, G_LEAK_IN, G_LEAK_OUT, G_LEFT, G_VENT, G_OFF, Q_IN, Q_OUT, Q_LEAK_IN, Q_LEAK_OUT, Q_OTHER, VENT_FLOW,
    T_SURFACE,
) = range(14)  # fmt: skip
GIVEN = 14
# Places in the list of plain numbers.
(
    STEP, EMIT, R_IN, Z_IN, Z_OUT, AIR_VAPOR, COLD, PER_KELVIN, PER_HUMIDITY, LATENT, C_WATER, C_VAPOR, C_AIR,
    SUCTION, STEFAN, ZERO_C, VENT_FILM, VENT_VAPOR, DT_FIRST, DT_STEP, TOLERANCE, SMALLEST, KEEPS, FREE,
) = range(24)  # fmt: skip
NUMBERS = 24
# Kinds of face, for liquid water: none passes, one material, two that touch.
DRY, SAME, CONTACT = 0, 1, 2
# How seeping air passes a face: not at all (by joints), within open layers that touch, or by holes in a sheet.
NONE, TOUCHING, HOLES = 0, 1, 2
# Rows of the scratch array, one number for each cell: the iterate; vapor
# pressure and its slopes; half resistances to heat and to vapor (Z: vapor
# alone, X: with the liquid that evaporates at a face); liquid conductivity,
# its integral, and the logarithm of humidity; water.
(
    T_NOW, U_NOW, P, P_U, P_T, R, R_U, Z, Z_U, X, X_U, X_T, K, K_U, PSI, PSI_U, LOG, W_NOW, W_U,
) = range(19)  # fmt: skip
# The linear system: what is missing of water and heat (M0, M1), its slopes by
# u and T of the cell (D), of the one before (L) and of the one behind (N);
# what is left of it on the way (E); and its answer, the steps of u and T.
(
    M0, M1, D00, D01, D10, D11, L00, L01, L10, L11, N00, N01, N10, N11, E00, E01, E10, E11, STEP_U, STEP_T,
) = range(19, 39)  # fmt: skip
ROWS = 39
# What the first and the last face pass on: flux, and its slopes by u and T of the cell inside.
IN_G, IN_GU, IN_GT, IN_Q, IN_QU, IN_QT, OUT_G, OUT_GU, OUT_GT, OUT_Q, OUT_QU, OUT_QT = range(12)
EDGES = 12
# What is kept of a variable membrane, to move it along its curve after the step is known.
BY_RH, BY_RISE, OFF, BY_WARMTH, PER_PRESSURE, WEIGHT, SPAN = range(7)
SHEET_ROWS = 7
# What `count` counts; where and when a failure was.
STEPS_DONE, PASSES, HALVINGS, FAILED_HOUR = range(4)
COUNTS = 4
# Passes after which membranes are held where they are, after which moves are
# halved, after which the step is, and the last.
HOLD, HALF, GIVE_UP, LAST = 12, 16, 22, 40
