"""What a learner's seat takes of the memory, its server and its lessons together, and a bound on it.

A system that gives its users groups of processes with a bound of their own
would do this better; on a plain computer no one but root may make them.  So
each process has a hard limit of its own, and the whole is looked at every
few seconds.
"""

import contextlib


def _shared_out(process):
    """Memory of a process, what it shares with others counted in part [bytes]."""
    import psutil

    try:
        return process.memory_full_info().pss
    except (AttributeError, psutil.AccessDenied):  # a system that does not tell
        return process.memory_info().rss


def _weigh(family, how):
    import psutil

    found = {}
    for each in family:
        with contextlib.suppress(psutil.NoSuchProcess, psutil.AccessDenied):
            found[each] = how(each)
    return found


def hold(pid, most):
    """End the heaviest lesson of a seat that takes more than it may.

    Parameters
    ----------
    pid : int
        Of its server.
    most : int
        What it may take [bytes].

    Returns
    -------
    int or None
        What the seat took [bytes], when a lesson was ended; None otherwise.
    """
    import psutil

    try:
        server = psutil.Process(pid)
        family = [server, *server.children(recursive=True)]
    except psutil.NoSuchProcess:
        return None
    # The cheap measure first: it counts what is shared several times, so it is never too low.
    if sum(_weigh(family, lambda each: each.memory_info().rss).values()) <= most:
        return None
    weights = _weigh(family, _shared_out)
    taken = sum(weights.values())
    lessons = {each: weight for each, weight in weights.items() if each != server}
    if taken <= most or not lessons:
        return None
    with contextlib.suppress(psutil.NoSuchProcess):
        max(lessons, key=lessons.get).kill()
    return taken
