"""The verdict of one state that never ends, of many at once, and of a single face."""

from dataclasses import replace

import numpy as np

from dryward.building import Material
from dryward.verdict.criteria import STATES, WET, criterion
from dryward.verdict.findings import Finding, Place, given, verdict
from dryward.verdict.surfaces import class_of_surface, mold_limit

#: What no steady state counts.
LEFT_OUT = ("time", "storage", "leak", "sun", "rain")


def of_steady(profile):
    """What a steady state means.

    Parameters
    ----------
    profile : Profile
        Of `steady.profile`.

    Returns
    -------
    Verdict
        Wet when water gathers at more than a least rate; damp when it
        gathers more slowly, or when wood or another surface that can mold
        would settle above its caution level.  There is no time in it.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.physics import steady
    >>> from dryward.weather import Air
    >>> of_steady(steady.profile(building.preset("vented-vault-osb"), Air(21.0, 0.4), Air(-7.0, 0.8))).state
    'wet'
    """
    given("The profile of steady.profile", profile, "wet_planes", "gain", "assembly")
    gain, found = criterion("steady-gain"), []
    # The state hangs on all planes together; each is told with the rate that is its own.
    whole = gain.state(profile.gain)
    for plane in profile.wet_planes:
        inside = plane.inner_layer == plane.outer_layer
        place = Place(plane.inner_layer) if inside else Place(plane.inner_layer, "outer", plane.outer_layer)
        found.append(Finding(gain.id, place, plane.rate, gain, whole, frost=plane.temperature < 0.0))
    for body in bodies(profile):
        found += _body(profile, *body)
    return verdict("steady", found, left_out=LEFT_OUT)


def bodies(state):
    """(places, first layer, last layer) of each body of a material that the state sees."""
    layers, count = state.assembly.layers, len(state.names)
    for places in state.assembly.bodies:
        if places[-1] < count and isinstance(layers[places[0]].substance, Material):
            yield places, layers[places[0]], layers[places[-1]]


def _body(profile, places, first, last):
    """Where a body would settle: its wood, and its two faces if they can mold."""
    made, names = first.substance, profile.names
    inside = names[places[0] - 1] if places[0] else "room air"
    outside = names[places[-1] + 1] if places[-1] + 1 < len(names) else "outdoor air"
    faces = (
        (Place(first.name, "inner", inside), profile.face(first.name, "inner")),
        (Place(first.name, "outer", outside), profile.face(last.name, "outer")),
    )
    humidity = [float(profile.relative_humidity[node]) for _, node in faces]
    if made.wood and made.sorption:
        limit = criterion("wood-moisture")
        value = float(max(moisture(made, each) for each in humidity))
        # A state that never ends has no damage limit: wood that takes all the time there is does not rot at once.
        state = STATES[min(int(limit.rank(value)), 1)]
        yield Finding(limit.id, faces[int(np.argmax(humidity))][0], value, limit, state)
    kind = class_of_surface(made)
    if kind is not None:
        for (place, node), value in zip(faces, humidity, strict=True):
            yield _face_humidity(place, float(profile.temperature[node]), value, kind)


def moisture(wood, humidity):
    """Moisture content of wood in balance with air [mass %]: bound water, as the curve has it short of saturation."""
    return 100.0 * np.asarray(wood.water_content(np.minimum(humidity, BOUND))) / wood.density


#: Humidity up to which the curve of wood is bound water [-]; the step from there to free saturation takes flooding.
BOUND = 0.99


def _face_humidity(place, temperature, humidity, kind="sensitive"):
    """A face against the humidity at which mold begins to grow there; water that gathers is another finding."""
    row = criterion("face-humidity")
    limit = replace(row, caution=float(mold_limit(temperature, kind)))
    return Finding(row.id, place, humidity, limit, STATES[int(humidity >= limit.caution)])


def states_of_sweep(summary):
    """The state of each case of a sweep: the same rule as `of_steady`, in arrays.

    Parameters
    ----------
    summary : Sweep
        Of `steady.sweep`.

    Returns
    -------
    ndarray of str
        In the shape of the sweep.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.physics import steady
    >>> from dryward.weather import Air
    >>> vault = building.preset("vented-vault-osb")
    >>> found = steady.sweep(vault, Air(21.0, 0.4), Air(-7.0, 0.8), indoor_relative_humidity=[0.1, 0.4])
    >>> states_of_sweep(found).tolist()
    ['dry', 'wet']
    """
    rank = np.asarray(criterion("steady-gain").rank(summary.gain))
    wood_limit = criterion("wood-moisture").caution
    for _, first, last in bodies(summary):
        made = first.substance
        nodes = [summary.face(first.name, "inner"), summary.face(last.name, "outer")]
        humidity = summary.relative_humidity[..., nodes]
        damp = np.zeros(rank.shape, bool)
        if made.wood and made.sorption:
            damp |= (moisture(made, humidity) >= wood_limit).any(axis=-1)
        kind = class_of_surface(made)
        if kind is not None:
            damp |= (humidity >= mold_limit(summary.temperature[..., nodes], kind)).any(axis=-1)
        rank = np.maximum(rank, damp)
    return np.asarray(STATES, dtype=object)[rank]


def of_face(temperature, vapor_pressure, saturation, substance=None, name="face"):
    """What air of a vapor pressure means to one face, if it gets there and stays.

    Parameters
    ----------
    temperature : float
        Of the face [degC].
    vapor_pressure, saturation : float
        Of the air, and the most at the face [Pa].
    substance : Material, optional
        What the face is of.
    name : str, optional

    Returns
    -------
    Verdict
        Wet when drops form, damp when wood would settle above its caution
        level or mold could grow, dry otherwise.

    Examples
    --------
    >>> of_face(5.0, 900.0, 872.6).state, of_face(15.0, 900.0, 1705.0).state
    ('wet', 'dry')
    """
    humidity = vapor_pressure / saturation
    place, found = Place(name), []
    if humidity >= 1.0:
        row = criterion("face-humidity")
        found.append(Finding(row.id, place, humidity, row, row.state(humidity), frost=temperature < 0.0))
    else:
        found.append(_face_humidity(place, temperature, humidity, _class(substance)))
        if _settles(substance):
            limit, value = criterion("wood-moisture"), float(moisture(substance, humidity))
            found.append(Finding(limit.id, place, value, limit, STATES[min(int(limit.rank(value)), 1)]))
    return verdict("face", found, left_out=("time", "storage"))


def states_of_faces(temperature, vapor_pressure, saturation, substance=None):
    """The state of each of many faces: the same rule as `of_face`, in arrays.

    Parameters
    ----------
    temperature, vapor_pressure, saturation : array
        As in `of_face`, of one shape or such as can be brought to one.
    substance : Material, optional
        What all of them are of.

    Returns
    -------
    ndarray of str
        In that shape.

    Examples
    --------
    >>> states_of_faces([5.0, 15.0], 900.0, [872.6, 1705.0]).tolist()
    ['wet', 'dry']
    """
    row, humidity = criterion("face-humidity"), np.asarray(vapor_pressure, dtype=float) / saturation
    damp = humidity >= mold_limit(temperature, _class(substance))
    if _settles(substance):
        damp = damp | (criterion("wood-moisture").rank(moisture(substance, humidity)) > 0)
    return np.asarray(STATES, dtype=object)[np.where(humidity >= row.damage, STATES.index(WET), damp.astype(int))]


def _class(substance):
    """Sensitivity class of a face; as of wood where nobody knows what it is of."""
    return class_of_surface(substance) or "sensitive"


def _settles(substance):
    """Whether it is wood with a sorption curve."""
    return isinstance(substance, Material) and bool(substance.wood and substance.sorption)


def of_amount(method, what, value, place=None, left_out=(), **more):
    """What one amount means against one limit.

    Parameters
    ----------
    method : str
        As in `Verdict`.
    what : str
        Id of the limit.
    value : float
        In its unit.
    place : Place, optional
    left_out : tuple of str, optional
    **more
        Other attributes of `Finding`.

    Returns
    -------
    Verdict

    Examples
    --------
    >>> of_amount("winter", "winter-water", 0.3).state
    'damp'
    """
    limit = criterion(what)
    found = Finding(what, place or Place(), float(value), limit, limit.state(float(value)), **more)
    return verdict(method, [found], left_out=tuple(left_out))
