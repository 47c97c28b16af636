"""A class of up to forty on one computer: ``jupyterhub -f jupyterhub_config.py``; README.md beside it says how."""

import os
import sys
from pathlib import Path

from dryward.school import lab, seat_start
from dryward.school.hub import Seat, Seats

folder = Path(os.environ["DRYWARD_CLASS"]).resolve()
state = folder / ".hub"
idle = 60 * float(os.environ.get("DRYWARD_IDLE_MINUTES", "30"))
state.mkdir(mode=0o700, parents=True, exist_ok=True)
# Every seat reads these; they hold the names of the lessons and nothing else.
settings = lab.write_settings(folder / "settings")

c = get_config()  # noqa: F821
c.JupyterHub.bind_url = os.environ.get("DRYWARD_ADDRESS", "http://127.0.0.1:8000")
c.JupyterHub.hub_ip = "127.0.0.1"
c.JupyterHub.hub_port = int(os.environ.get("DRYWARD_HUB_PORT", "8081"))
c.JupyterHub.db_url = f"sqlite:///{state / 'hub.sqlite'}"
c.JupyterHub.cookie_secret_file = str(state / "cookie_secret")
c.ConfigurableHTTPProxy.command = [os.environ.get("DRYWARD_PROXY", "configurable-http-proxy")]
c.ConfigurableHTTPProxy.pid_file = str(state / "proxy.pid")
c.ConfigurableHTTPProxy.api_url = f"http://127.0.0.1:{os.environ.get('DRYWARD_PROXY_PORT', '8001')}"

c.JupyterHub.authenticator_class = Seats
c.Seats.folder = str(folder)
c.JupyterHub.spawner_class = Seat
c.Seat.folder = str(folder)
if os.environ.get("DRYWARD_ONE_USER"):
    c.Seat.first_number = 0  # all seats are the user who started the hub: only for trying it out
# The whole class starts at once; the surplus would be turned away.
c.JupyterHub.concurrent_spawn_limit = 40
c.Spawner.start_timeout = c.Spawner.http_timeout = 180

# Of a seat: the system holds each of its processes to it, and every few seconds the hub looks at them together.
c.Spawner.mem_limit = "1G"
c.Spawner.poll_interval = 5
c.Spawner.cmd = [sys.executable, "-m", "jupyterhub.singleuser"]
c.Spawner.default_url = "/doc/tree/00-start.ipynb"
c.Spawner.environment = {
    "JUPYTER_CONFIG_PATH": os.pathsep.join((str(settings), str(lab.SETTINGS))),
    # Says in one sentence that the memory is used up.
    "PYTHONSTARTUP": seat_start.__file__,
    "JUPYTERHUB_SINGLEUSER_APP": "jupyter_server.serverapp.ServerApp",
    # Thirty kernels on a few cores: one thread each.
    "OMP_NUM_THREADS": "1",
    "OPENBLAS_NUM_THREADS": "1",
    "NUMBA_NUM_THREADS": "2",
}
c.Spawner.args = [
    *lab.OPTIONS,
    # Lessons that nobody has open close after half an hour, idle seats after an hour; nothing that was made is lost.
    f"--MappingKernelManager.cull_idle_timeout={idle:.0f}",
    f"--MappingKernelManager.cull_interval={min(60, max(1, idle // 4)):.0f}",
    f"--ServerApp.shutdown_no_activity_timeout={2 * idle:.0f}",
    "--ServerApp.terminals_enabled=False",
]
if os.environ.get("DRYWARD_ONE_USER"):
    c.Spawner.args.append("--allow-root")
