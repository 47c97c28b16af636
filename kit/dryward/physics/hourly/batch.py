"""Many runs at once on all cores, results as they come.

The march is compiled code that lets go of the interpreter, so plain threads
use every core; nothing is copied to other processes.
"""

import os
from concurrent.futures import ThreadPoolExecutor, as_completed

from dryward.physics.hourly.simulate import Stopped, simulate, warm_up


def batch(cases, measure, found=None, workers=None):
    """Run many cases and keep one measure of each.

    Parameters
    ----------
    cases : sequence of (assembly, weather, indoor, options)
        `options` are keywords of `simulate`.
    measure : function
        From `Hours` to what is kept.
    found : function, optional
        Called with (place in the sequence, measure) as each run ends; when it
        returns False, the runs not yet begun are dropped.
    workers : int, optional
        Runs at a time, 1 or more [-]; otherwise one for each core.

    Returns
    -------
    list
        The measures, in the order of the cases.

    Raises
    ------
    Stopped
        When `found` ended it.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.weather import Air
    >>> wall = building.preset("wood-frame-wall")
    >>> cases = [(wall, Air(0.0, 0.8), Air(20.0, rh), {"hours": 24}) for rh in (0.3, 0.5)]
    >>> dry, humid = batch(cases, lambda run: run.water[-1])
    >>> bool(dry < humid)
    True
    """
    warm_up()  # threads that compile the same thing wait for each other

    def one(place):
        assembly, weather, indoor, options = cases[place]
        return measure(simulate(assembly, weather, indoor, **options))

    results = [None] * len(cases)
    with ThreadPoolExecutor(max_workers=workers or os.cpu_count()) as pool:
        waiting = {pool.submit(one, place): place for place in range(len(cases))}
        try:
            for done in as_completed(waiting):
                place = waiting[done]
                results[place] = done.result()
                if found is not None and found(place, results[place]) is False:
                    raise Stopped("The batch was stopped.")
        except BaseException:
            pool.shutdown(wait=True, cancel_futures=True)
            raise
    return results
