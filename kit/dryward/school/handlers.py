"""What the addresses of the pages answer."""

from collections.abc import AsyncIterator, Awaitable
from copy import deepcopy
from http.client import responses
from typing import Any, cast

from jupyter_client import AsyncKernelClient, KernelManager
from jupyter_server.auth import User
from jupyter_server.auth.decorator import allow_unauthenticated
from jupyter_server.base.handlers import FileFindHandler, JupyterHandler
from jupyter_server.services.kernels.handlers import KernelHandler
from markupsafe import Markup, escape
from nbclient.exceptions import CellExecutionError, DeadKernelError
from nbformat import NotebookNode
from tornado import web
from voila.execute import VoilaExecutor, strip_code_cell_warnings
from voila.exporter import VoilaExporter
from voila.notebook_renderer import NotebookRenderer
from voila.static_file_handler import MultiStaticFileHandler
from voila.tornado.handler import TornadoVoilaHandler
from voila.tornado.kernel_websocket_handler import VoilaKernelWebsocketHandler
from voila.utils import get_page_config

from dryward import language
from dryward.checks import BadFile
from dryward.language import message
from dryward.school.kernels import Busy, Full, Gone, Kernels
from dryward.school.learners import Door, read_code, spoken
from dryward.school.standing import (
    board,
    contents,
    following,
    held_heads,
    held_rows,
    known_way,
    nobody_yet,
    right_of,
    titles,
    words_of,
)
from dryward.teaching import lessons

#: Kernels on which a page is tried before the learner is told.
_TRIES = 3


class Refused(web.HTTPError):
    """Not now, with the reason in plain words."""

    def __init__(self, words: str) -> None:
        super().__init__(503)
        self.words = words


class Plain(JupyterHandler):
    """A page of our own, and an error page in plain words."""

    @property
    def door(self) -> Door:
        """Who may come in."""
        return cast(Door, self.identity_provider)

    @property
    def kernels(self) -> Kernels:
        """The kernels kept ready and in use."""
        return cast(Kernels, self.kernel_manager)

    def show(self, template: str, **words: object) -> None:
        """Answer with a page."""
        self.set_header("Content-Type", "text/html; charset=utf-8")
        self.set_header("Cache-Control", "no-store")
        page = self.settings["pages_env"].get_template(template)
        self.finish(page.render(base=self.base_url, form=self.xsrf_form_html(), **words))

    def write_error(self, status_code: int, **why: Any) -> None:
        """One sentence, no number of a line."""
        reason = why.get("exc_info", (None, None))[1]
        words = reason.words if isinstance(reason, Refused) else message("school.error", status=status_code)
        title = message("school.error-title", status=status_code)
        self.show("error.html", title=title, words=words, inside=self.current_user)

    def get_login_url(self) -> str:
        """Where who has no password goes."""
        return f"{self.base_url}enter"

    def attempt(self, right: bool) -> bool:
        """Whether what was typed is right; it does not matter after too many wrong ones from that address."""
        attempts, address = self.door.login_attempts, self.request.remote_ip or ""
        if attempts.too_many(address):
            raise web.HTTPError(429)
        if not right:
            attempts.wrong(address)
        return right


class Enter(Plain):
    """The door."""

    @allow_unauthenticated
    def get(self) -> None:
        """Ask for the password."""
        self._ask("")

    @allow_unauthenticated
    def post(self) -> None:
        """Look at the password, and go in."""
        if not self.attempt(self.door.opens(self.get_body_argument("password", ""))):
            self.set_status(401)
            self._ask(message("school.not-the-password"))
            return
        self.door.enter(self)
        self.redirect(self._onward())

    def _ask(self, wrong: str) -> None:
        self.show("enter.html", wrong=wrong, next=self._onward())

    def _onward(self) -> str:
        wanted = self.get_argument("next", self.base_url)
        lesson = f"{self.base_url}lesson/"
        return wanted if wanted.startswith(lesson) and "\\" not in wanted else self.base_url


class Contents(Plain):
    """The first page: the lessons by pathway."""

    @allow_unauthenticated
    def get(self) -> None:
        """List them; a key in the address lets in."""
        key = self.get_query_argument("key", None)
        if key is not None and self.attempt(self.door.opens(key)):
            self.door.enter(self)
            self.redirect(self.base_url)  # without the key in the address
            return
        if self.current_user is None:
            self.redirect(self.get_login_url())
            return
        learners, code = self.door.learners, self.current_user.username
        self.show(
            "contents.html",
            code="" if learners.own else spoken(code),
            **contents(learners.folder(code), self.get_query_argument("way", None)),
        )


class InstructorsBoard(Plain):
    """How the class stands, for who has the instructor's key."""

    @allow_unauthenticated
    def get(self) -> None:
        """Show it; a key in the address lets in."""
        door, key = self.door, self.get_query_argument("key", None)
        if key is not None and self.attempt(door.opens_board(key)):
            door.enter_board(self)
            self.redirect(f"{self.base_url}board")  # without the key in the address
            return
        if not door.sees_board(self):
            raise web.HTTPError(404)
        told = board(door.learners.folders())
        groups = [(group, *words_of(group), held_rows(group)) for group in told.groups]
        texts = {"titles": titles(), "right_of": right_of, "nobody": nobody_yet(), "held_heads": held_heads()}
        self.show("board.html", board=told, groups=groups, **texts)


class Afresh(Plain):
    """Somebody else sits down at this browser, or somebody comes back with a code."""

    def post(self) -> None:
        """Become that learner."""
        learners, typed = self.door.learners, self.get_body_argument("code", "")
        if not typed.strip():
            self.door.name(self, learners.new())
            self.redirect(self.base_url)
            return
        code = read_code(typed)
        if not self.attempt(learners.known(code)) or code is None:
            self.set_status(404)
            self.show("error.html", title=message("school.unknown-code-title"), words=message("school.unknown-code"),
                      inside=True)  # fmt: skip
            return
        self.door.name(self, code)
        self.redirect(self.base_url)


class Opening(NotebookRenderer):
    """Voila's own, on a kernel that is ready, over the line to it that is open already."""

    async def html(self, client: AsyncKernelClient, kernel: KernelManager, kernel_id: str) -> str:
        """The page; Gone when the kernel died before it was made."""
        self._client = client
        await self.initialize()
        return await self.generate_content_str(kernel_id, kernel)

    async def initialize(self) -> None:
        """Each lesson and the template are read once: when a class comes in together, there is no time to spare."""
        kept, told = self.request_handler.settings["openings"], self.voila_configuration
        if self.notebook_path not in kept:
            kept[self.notebook_path] = await self.load_notebook(self.notebook_path)
        if "exporter" not in kept:
            kept["exporter"] = VoilaExporter(
                template_paths=self.template_paths,
                template_name=told.template,
                config=self.traitlet_config,
                contents_manager=self.contents_manager,
                theme=told.theme,
                base_url=self.base_url,
            )
        self.cwd, self.exporter = "", kept["exporter"]
        self.template_name, self.theme = told.template, told.theme
        self.notebook = self.prelaunch_hook(
            self.request_handler, notebook=deepcopy(kept[self.notebook_path]), cwd=self.cwd
        )
        self.page_config["jupyterLabTheme"] = self.theme
        self.resources = {
            "base_url": self.base_url,
            "theme": self.theme,
            "template": self.template_name,
            "metadata": {"name": self.notebook_path},
            "page_config": self.page_config,
        }

    async def _jinja_kernel_start(self, nb: NotebookNode, kernel_id: str, kernel_future: KernelManager) -> str:
        self.executor = VoilaExecutor(nb, km=kernel_future, config=self.traitlet_config, show_tracebacks=False)
        self.executor.kc = self._client
        self._client.allow_stdin = False
        return kernel_id

    async def _jinja_cell_generator(self, nb: NotebookNode, kernel_id: str) -> AsyncIterator[NotebookNode]:
        for number, cell in enumerate(nb.cells):
            try:
                await self.executor.execute_cell(cell, None, number, store_history=False)
            except DeadKernelError:
                raise Gone from None
            except CellExecutionError:  # the template says it in plain words
                strip_code_cell_warnings(cell)
                self.executor.strip_code_cell_errors(cell)
            yield cell


class Lesson(Plain, TornadoVoilaHandler):
    """A lesson, on a kernel of its own that works in the learner's folder."""

    @web.authenticated
    async def get(self, id: str) -> None:
        """Show it."""
        if id not in [each.id for each in lessons.lessons()]:
            raise web.HTTPError(404)
        try:
            for _ in range(_TRIES):
                try:
                    page = await self._page(lessons.lesson(id).file)
                    break
                except Gone:  # its kernel died under it; the next one
                    continue
            else:
                raise Busy
        except Full:
            raise web.HTTPError(503) from None
        except Busy:
            raise Refused(message("school.busy")) from None
        except BadFile as said:
            raise Refused(str(said)) from None
        self.set_header("Content-Type", "text/html; charset=utf-8")
        self.set_header("Cache-Control", "no-store")
        self.finish(page)

    async def _page(self, file: str) -> str:
        learner = self.current_user.username
        opening = Opening(
            request_handler=self,
            voila_configuration=self.voila_configuration,
            traitlet_config=self.traitlet_config,
            notebook_path=file,
            template_paths=self.template_paths,
            config_manager=self.config_manager,
            contents_manager=self.contents_manager,
            kernel_spec_manager=self.kernel_spec_manager,
            base_url=self.base_url,
            page_config=self._page_config(),
        )
        kernels, folder = self.kernels, self.door.learners.folder(learner)
        kernel_id, client = await kernels.hand_over(learner, folder)
        try:
            return await opening.html(client, kernels.get_kernel(kernel_id), kernel_id)
        except BaseException as reason:
            dead = isinstance(reason, Exception) and not await client.is_alive()
            await kernels.drop(kernel_id)
            if dead:
                raise Gone from None
            raise
        finally:
            client.stop_channels()

    def _page_config(self) -> dict[str, Any]:
        kept = self.settings["openings"]
        if "page config" not in kept:
            kept["page config"] = get_page_config(self.base_url, self.settings, self.log, self.voila_configuration)
        return kept["page config"]  # which the renderer copies

    def prepare_lesson(self, notebook: NotebookNode) -> NotebookNode:
        """The notebook as a page shows it: the lesson's page alone, and where to go from it."""
        lesson = lessons.lesson(notebook.metadata["dryward"]["lesson"])
        notebook.cells = [cell for cell in notebook.cells if "panels.page(" in cell.source][:1]
        way = known_way(self.get_query_argument("way", None))
        title = lesson.title
        if lesson.number:
            title = message("school.lesson-numbered", number=lesson.number, title=lesson.title)
        notebook.metadata["page"] = {
            "title": title,
            "way": way or "",
            "language": language.name(),
            "words": lesson_words(title, self.base_url),
            **{name: each and {**each, "words": _step(name, each)} for name, each in following(lesson.id, way).items()},
        }
        return notebook


def _step(name: str, lesson: dict[str, Any]) -> str:
    """The words of the link to the lesson before or after."""
    facts = {"number": lesson["number"], "title": lesson["title"]}
    return message("school.lesson-back", **facts) if name == "before" else message("school.lesson-next", **facts)


def lesson_words(title: str, base: str) -> dict[str, str]:
    """What the frame of a lesson says, by name."""
    link = Markup('<a href="{}">{}</a>').format(base, message("school.lesson-all-in-sentence"))
    not_opened = escape(message("school.lesson-not-opened", all="\ue000"))
    return {
        "title": message("school.page-title", title=title),
        "skip": message("school.lesson-skip"),
        "ways": message("school.lesson-ways"),
        "all": message("school.lesson-all"),
        "opening": message("school.lesson-opening"),
        "not_opened": str(not_opened).replace("\ue000", str(link)),
        "stopped": message("school.lesson-stopped"),
        "again": message("school.lesson-again"),
        "out_of_reach": message("school.lesson-out-of-reach"),
    }


class Owned(JupyterHandler):
    """Only who was given a kernel may reach it; to others it does not exist."""

    async def prepare(self, *args: Any, **kwargs: Any) -> None:
        """Compare the two."""
        await super().prepare(*args, **kwargs)
        kernel_id = self.path_kwargs.get("kernel_id") or next(iter(self.path_args), "")
        owner = cast(Kernels, self.kernel_manager).owners.get(kernel_id)
        if self.current_user is None or owner != self.current_user.username:
            raise web.HTTPError(404)


class KernelState(Owned, KernelHandler):
    """Whether a kernel is there: what the page's script asks before it connects."""

    SUPPORTED_METHODS = ("GET",)


class KernelTalk(Owned, VoilaKernelWebsocketHandler):
    """The messages between a page and its kernel: sliders and pictures, never code."""


class Leave(Owned, Plain):
    """A page that is closed says good-bye."""

    @web.authenticated
    def post(self, kernel_id: str) -> None:
        """Let the kernel go."""
        self.kernels.left(kernel_id)
        self.set_status(204)
        self.finish()

    def check_xsrf_cookie(self) -> None:
        """The kernel's name is the secret here: a browser that closes a page sends no other."""
        if not self.check_origin():
            raise web.HTTPError(404)


class _Inside(web.RequestHandler):
    """A file that only who came in may have."""

    def get_current_user(self) -> User | None:
        """As for every other address."""
        return self.settings["identity_provider"].get_user(self)

    def prepare(self) -> Awaitable[None] | None:
        """Look at the cookie."""
        if self.current_user is None and not self.settings["identity_provider"].sees_board(self):
            raise web.HTTPError(403)
        return super().prepare()

    def write_error(self, status_code: int, **why: Any) -> None:
        """No more than the number."""
        self.finish(responses.get(status_code, "Trouble"))


class Static(_Inside, MultiStaticFileHandler):
    """The scripts of the pages."""

    def validate_absolute_path(self, root: str, absolute_path: str) -> str | None:
        """What is outside, or a folder, is not there."""
        try:
            return super().validate_absolute_path(root, absolute_path)
        except web.HTTPError:
            raise web.HTTPError(404) from None


class Extensions(FileFindHandler):
    """The scripts of the widgets."""

    async def prepare(self, **kwargs: Any) -> None:
        """Look at the cookie before anything is looked for."""
        await super().prepare(**kwargs)
        if self.current_user is None:
            raise web.HTTPError(403)

    def write_error(self, status_code: int, **why: Any) -> None:
        """No more than the number."""
        self.finish(responses.get(status_code, "Trouble"))


class Nowhere(Plain):
    """Every other address."""

    def get(self, *path: str) -> None:
        """Say so."""
        raise web.HTTPError(404)

    post = put = delete = patch = get
