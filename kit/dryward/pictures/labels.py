"""Names over a drawing that never stand on each other."""


def stairs(items, middle, gap=24.0, most=5):
    """Rows for names that have leaders: two staircases, one from each side.

    The names left of the middle start at their leader and run right, the
    others end at theirs; each stands higher than its neighbor nearer to the
    middle, so that no leader crosses a name of its own side.  Two names
    share a row only where both fit whole.

    Parameters
    ----------
    items : sequence of (key, x, width)
        Left to right [px].
    middle : float
        Where the two sides meet [px].
    gap : float
        Least room between two names of a row [px].
    most : int
        Names on each side; the others get none.

    Returns
    -------
    rows : dict
        Key -> row, from 1 upward.
    near : set
        Keys of the names that run right.
    count : int
        Rows that are taken, row 0 with them.

    Examples
    --------
    >>> rows, near, count = stairs([("a", 10, 30), ("b", 20, 30), ("z", 90, 20)], 50)
    >>> rows, sorted(near), count
    ({'b': 1, 'a': 2, 'z': 2}, ['a', 'b'], 3)
    """
    at, wide = {key: x for key, x, _ in items}, {key: width for key, _, width in items}
    near = [key for key, x, _ in items if x <= middle][:most]
    far = [key for key, x, _ in items if x > middle][::-1][:most]
    left, row, rows = set(near), 1, {}
    while near or far:
        if near and far and wide[near[-1]] + wide[far[-1]] + gap > at[far[-1]] - at[near[-1]]:
            rows[(near if len(near) >= len(far) else far).pop()] = row
        else:
            for group in (near, far):
                if group:
                    rows[group.pop()] = row
        row += 1
    return rows, left, row


def apart(places, room):
    """Heights for names beside their lines: each at its own line, pushed up and down where they are too close.

    Parameters
    ----------
    places : sequence of float
        Of the lines, rising.
    room : float
        Least distance of two names, in the same unit.

    Returns
    -------
    list of float

    Examples
    --------
    >>> apart([10.0, 14.0, 40.0], 8.0)
    [8.0, 16.0, 40.0]
    """
    groups = []  # of names that stand shoulder to shoulder: (where they would be, how many)
    for place in places:
        wanted = [place]
        while groups and _middle(wanted) - _middle(groups[-1]) < room * (len(wanted) + len(groups[-1])) / 2:
            wanted = groups.pop() + wanted
        groups.append(wanted)
    return [
        _middle(wanted) + room * (number - (len(wanted) - 1) / 2) for wanted in groups for number in range(len(wanted))
    ]


def _middle(places):
    return sum(places) / len(places)
