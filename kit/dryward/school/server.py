"""The server of the pages: Voila, with a door, kernels kept ready, and only the addresses it needs."""

import logging
import os
import shutil
import ssl
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import jinja2
from markupsafe import Markup, escape
from tornado.httpserver import HTTPServer
from tornado.httputil import HTTPHeaders
from tornado.ioloop import IOLoop
from tornado.web import Application, OutputTransform
from traitlets.config import Config
from voila.app import Voila

from dryward import language
from dryward.checks import PlainError
from dryward.language import message
from dryward.school import handlers
from dryward.school.kernels import Kernels, PageConnection
from dryward.school.learners import Door, Learners

#: What Jupyter finds when it looks for templates here.
SHARE = Path(__file__).resolve().parent / "share"
TEMPLATE = "dryward"
#: The widgets' own scripts and anywidget's; nothing else that happens to be installed is loaded.
_WIDGETS = ["@voila-dashboards/widgets-manager8", "@jupyter-widgets/jupyterlab-manager", "anywidget"]
_KERNEL = r"(?P<kernel_id>\w+-\w+-\w+-\w+-\w+)"
#: Seconds between two looks at kernels that nobody uses, at most.
_LOOK = 20
#: Largest message of a page [bytes]: a weather file that is handed in.
_LARGEST = 40_000_000
#: Longest temporary folder [characters] in which a kernel's sockets still have names that the system takes.
_LONGEST = 24
#: Nothing from elsewhere, nothing into a frame, no camera or place.  Sliders and pictures need
#: styles within the page, scripts made from the kit's own text, and pictures made in the page.
RULES = {
    "Content-Security-Policy": "; ".join(
        (
            "default-src 'none'",
            "script-src 'self' blob:",
            "style-src 'self' 'unsafe-inline' blob:",
            "img-src 'self' data: blob:",
            "font-src 'self' data:",
            "connect-src 'self' blob: data:",
            "base-uri 'none'",
            "form-action 'self'",
            "frame-ancestors 'none'",
        )
    ),
    "X-Frame-Options": "DENY",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
}


class NoPort(PlainError):
    """The port is taken."""


class Rules(OutputTransform):
    """Puts the rules on every answer, whoever made it."""

    def transform_first_chunk(
        self, status_code: int, headers: HTTPHeaders, chunk: bytes, finishing: bool
    ) -> tuple[int, HTTPHeaders, bytes]:
        """Before the first byte goes out."""
        for name, value in RULES.items():
            headers[name] = value
        headers.pop("Server", None)
        return status_code, headers, chunk


class Pages(Voila):
    """Voila for these lessons and nothing else."""

    def set_up(
        self,
        learners: Learners,
        secrets: tuple[str, str],
        address: str,
        certificate: tuple[str, str] | None,
        when_ready: Callable[[], None] | None,
    ) -> None:
        """Take what the command line said."""
        self.learners, self.secrets, self.address = learners, secrets, address
        self.certificate, self.when_ready = certificate, when_ready

    def init_settings(self) -> dict[str, Any]:
        """Those of Voila, with our door and rules."""
        settings = super().init_settings()
        self.identity_provider.set_up(*self.secrets, self.learners)
        return settings | {
            "cookie_secret": self.learners.key,
            "login_url": f"{self.base_url}enter",
            "allow_remote_access": self.address not in ("127.0.0.1", "localhost"),
            "serve_traceback": False,
            # Milliseconds. The timeout must be longer, or Jupyter hangs up at the first ping.
            "ws_ping_interval": 15_000,
            "ws_ping_timeout": 60_000,
            "pages_env": environment(),
            "openings": {},
            "xsrf_cookie_kwargs": {"samesite": "Lax"},
            "websocket_max_message_size": _LARGEST,
            "log_function": lambda handler: None,
            "transforms": [Rules],
        }

    def init_handlers(self) -> list[tuple[Any, ...]]:
        """Every address there is."""
        root = self.base_url.rstrip("/")
        lesson = {
            "template_paths": self.template_paths,
            "config": self.config,
            "voila_configuration": self.voila_configuration,
        }
        statics = {"paths": [str(SHARE / "voila" / "templates" / TEMPLATE / "static"), *self.static_paths]}
        return [
            (rf"{root}/", handlers.Contents),
            (rf"{root}/enter", handlers.Enter),
            (rf"{root}/afresh", handlers.Afresh),
            (rf"{root}/board", handlers.InstructorsBoard),
            (rf"{root}/lesson/([a-z0-9-]+)", handlers.Lesson, lesson),
            (rf"{root}/api/kernels/{_KERNEL}", handlers.KernelState),
            (rf"{root}/api/kernels/{_KERNEL}/channels", handlers.KernelTalk),
            (rf"{root}/voila/api/shutdown/{_KERNEL}", handlers.Leave),
            (rf"{root}/voila/static/(.*)", handlers.Static, statics),
            (
                rf"{root}/voila/labextensions/(.*)",
                handlers.Extensions,
                {"path": self.labextensions_path, "no_cache_paths": []},
            ),
            (r"/(.*)", handlers.Nowhere),
        ]

    def start(self) -> None:
        """Listen, and serve until stopped."""
        # Tornado reads Jupyter's milliseconds as seconds and says so at every connection.
        logging.getLogger("tornado.general").setLevel(logging.ERROR)
        self.connection_dir = tempfile.mkdtemp(prefix="dw_", dir=self.connection_dir_root)
        settings = self.init_settings()
        self.app = Application(self.init_handlers(), **settings)
        self.listen()

    def listen(self) -> None:
        """Open the door, start filling, and say so."""
        context = None
        if self.certificate:
            context = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
            context.load_cert_chain(*self.certificate)
        server = HTTPServer(self.app, ssl_options=context)
        try:
            server.listen(self.port, self.address)
        except OSError as reason:
            why = str(reason.strerror or reason)
            raise NoPort(message("school.no-port", address=self.address, port=str(self.port), why=why)) from None
        self.ioloop = IOLoop.current()
        self.ioloop.add_callback(self.kernel_manager.fill)
        if self.when_ready:
            self.ioloop.add_callback(self.when_ready)
        try:
            self.ioloop.start()
        finally:
            server.stop()
            self.ioloop.run_sync(self.close)

    async def close(self) -> None:
        """End every kernel at once; what the learners made is in their files."""
        await self.kernel_manager.stop_filling()
        await self.kernel_manager.shutdown_all(now=True)
        shutil.rmtree(self.connection_dir, ignore_errors=True)


def environment() -> jinja2.Environment:
    """Where our own pages come from."""
    folder = SHARE / "voila" / "templates" / TEMPLATE
    made = jinja2.Environment(loader=jinja2.FileSystemLoader(folder), autoescape=True, trim_blocks=True)
    made.globals.update(say=say, language=language.name)
    return made


def say(id: str, **facts: object) -> Markup:
    """A message of our pages; a fact that is markup, such as a link, stays so."""
    links = {name: fact for name, fact in facts.items() if isinstance(fact, Markup)}
    # Places that no text has, until the words around them are made safe.
    places = {name: f"\ue000{name}\ue001" for name in links}
    text = escape(message(f"school.page-{id}", **{**facts, **places}))
    for name, link in links.items():
        text = Markup(str(text).replace(places[name], str(link)))
    return text


def configuration(lessons: Path, port: int, ready: int, most: int, away: int) -> Config:
    """What Voila is told.

    `ready` kernels are kept ready, `most` are in use at once; a page may be
    `away` so long [s], by a cut network or a sleeping tablet, before its
    kernel goes.
    """
    told = Config()
    told.Voila.update(
        {
            "root_dir": str(lessons),
            "port": port,
            "open_browser": False,
            "log_level": 50,
            "identity_provider_class": Door,
            "kernel_websocket_connection_class": PageConnection,
            "config_file_paths": [],
        }
    )
    told.VoilaConfiguration.update(
        {
            "template": TEMPLATE,
            "allow_template_override": "NO",
            "allow_theme_override": "NO",
            "multi_kernel_manager_class": Kernels,
            "prelaunch_hook": lambda handler, notebook, cwd: handler.prepare_lesson(notebook),
            "extension_allowlist": _WIDGETS,
            "extension_denylist": [],
            "file_allowlist": [],
        }
    )
    told.Kernels.update(
        {
            "ready_size": ready,
            "most": most,
            "cull_interval": max(1, min(_LOOK, away // 2)),
            "cull_idle_timeout": away,
            "cull_connected": False,
        }
    )
    # A page prints nothing that could flood a browser, and no picture may be held back.
    told.PageConnection.limit_rate = False
    # A kernel that died comes back empty: better to say so than to show a page that does nothing.
    told.KernelRestarter.restart_limit = 0
    if os.name == "posix" and len(os.fsencode(tempfile.gettempdir())) <= _LONGEST:
        told.KernelManager.transport = "ipc"  # files instead of open ports
    return told


def serve(
    told: Config,
    learners: Learners,
    secrets: tuple[str, str],
    address: str,
    certificate: tuple[str, str] | None = None,
    when_ready: Callable[[], None] | None = None,
) -> None:
    """Serve the lessons until stopped; `secrets` are the password and the key of the instructor's board."""
    os.environ["JUPYTER_PATH"] = os.pathsep.join(filter(None, [str(SHARE), os.environ.get("JUPYTER_PATH", "")]))
    app = Pages(config=told)
    app.set_up(learners, secrets, address, certificate, when_ready)
    app.initialize([])
    app.start()
