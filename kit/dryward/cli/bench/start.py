"""Starting a lesson: seconds and memory in a new process."""

from dryward.cli.bench.timing import Measurement, in_a_new_process

_CLOCK = "import time; start = time.perf_counter()\n{code}\nprint(time.perf_counter() - start)"
_PAGE = "from dryward import panels; page = panels.page('{id}'); page.picture"
#: Private and shared memory of the process, by its share [MB].
_MEMORY = """
{code}
import os, sys
try:
    lines = open(f"/proc/{{os.getpid()}}/smaps_rollup").read().splitlines()
    print(next(int(line.split()[1]) for line in lines if line.startswith("Pss:")) / 1000)
except OSError:
    import resource
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    print(most / (1e6 if sys.platform == "darwin" else 1e3))
"""


def measurements():
    """Import, first picture, memory; each in new processes.

    Yields
    ------
    Measurement
    """
    steady = _PAGE.format(id="where-it-gets-wet")
    seconds = in_a_new_process(_CLOCK.format(code="import dryward.panels"))
    yield Measurement("import of the pages", seconds, "s")
    seconds = in_a_new_process(_CLOCK.format(code=steady))
    yield Measurement("new process to first picture, steady lesson", seconds, "s", rule="at most", target=2.5)
    bare = in_a_new_process(_MEMORY.format(code="import matplotlib.figure, ipywidgets"))
    ours = in_a_new_process(_MEMORY.format(code=steady))
    yield Measurement("memory of a steady lesson", ours, "MB", rule="at most", target=100.0)
    yield Measurement("memory of NumPy, Matplotlib and the widgets alone", bare, "MB")
