"""Python processes kept ready: any lesson opens on one, and it goes when its learner has left."""

import asyncio
import contextlib
import os
import time
from collections.abc import Coroutine
from datetime import UTC, datetime, timedelta
from pathlib import Path
from queue import Empty
from typing import Any

from jupyter_client import AsyncKernelClient, KernelManager
from jupyter_server.services.kernels.connection.channels import ZMQChannelsWebsocketConnection
from jupyter_server.services.kernels.kernelmanager import AsyncMappingKernelManager
from tornado import web
from traitlets import Integer

from dryward.checks import BadFile
from dryward.language import message

#: What takes time at the start of every lesson, done before anybody waits for it.
_WARM = """
import os as _os, dryward.panels.page, dryward.pictures.drawing, dryward.teaching.kinds, dryward.teaching.lessons
from dryward.physics import steady as _steady
dryward.teaching.lessons.lessons()
"""
_MOVE_IN = "_os.makedirs({folder!r}, exist_ok=True); _os.chdir({folder!r}); del _os, _steady"
#: Seconds after a kernel was taken before the next one is started: the page it was taken for comes first.
_REFILL = 1.0
#: Seconds within which a kernel must be ready.
_PATIENCE = 120
#: Seconds after which who waits for a kernel looks whether more must be started: one may have died on its way.
_LOOK = 1.0
#: Seconds a page that says good-bye may still come back, by the browser's back key or a download.
_GRACE = 10
#: Seconds between two looks whether the kernel still lives, and seconds it may take.
_LIFE, _LONGEST = 0.5, 60


class Full(Exception):
    """No place is left."""


class Busy(Exception):
    """No kernel became ready in time."""


class Gone(Exception):
    """The kernel died, or does not answer."""


class Failed(Exception):
    """The kernel lives, but what it was told went wrong."""


async def run(client: AsyncKernelClient, code: str) -> None:
    """Let a kernel run a line; Gone when it died or takes longer than a minute, Failed when the line went wrong."""
    asked, end = client.execute(code, silent=True, store_history=False, allow_stdin=False), time.monotonic() + _LONGEST
    while True:
        try:
            reply = await client.get_shell_msg(timeout=_LIFE)
        except Empty:
            # Killed by the system a moment ago, it still looks alive: so this is asked until the answer comes.
            if time.monotonic() > end or not await client.is_alive():
                raise Gone from None
            continue
        if reply["parent_header"].get("msg_id") == asked:
            break
    if reply["content"]["status"] != "ok":
        raise Failed(reply["content"].get("evalue") or reply["content"]["status"])


class Kernels(AsyncMappingKernelManager):
    """Kernels with the kit already loaded, handed to learners one by one."""

    ready_size = Integer(4, config=True, help=message("school.ready-help"))
    most = Integer(60, config=True, help=message("school.most-help"))

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.owners: dict[str, str] = {}
        self._ready: dict[str, AsyncKernelClient] = {}
        self._news = asyncio.Event()
        self._coming = self._waiting = self._promised = 0
        # A few at a time: the first learners have theirs while the others' are still loading.
        self._few = asyncio.Semaphore((os.cpu_count() or 1) + 1)
        self._tasks: set[asyncio.Task[None]] = set()
        self._closing = False

    def get_kernel(self, kernel_id: str) -> Any:
        """A kernel; the server writes more on it, such as its last activity, than its type knows."""
        return super().get_kernel(kernel_id)

    # --- kept ready ----------------------------------------------------------

    def fill(self) -> None:
        """Start as many kernels as are waited for, and as many as are to be ready."""
        if self._closing:
            return
        for _ in range(self.ready_size + self._waiting - len(self._ready) - self._coming):
            self._coming += 1
            self._spawn(self._start_one())

    def _fill_soon(self) -> None:
        asyncio.get_running_loop().call_later(_REFILL, self.fill)

    def _spawn(self, coroutine: Coroutine[Any, Any, None]) -> None:
        task = asyncio.get_running_loop().create_task(coroutine)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)

    async def _start_one(self) -> None:
        kernel_id = client = None
        try:
            async with self._few:
                kernel_id = await self.start_kernel()
                client = self.get_kernel(kernel_id).client()
                client.start_channels()
                await client.wait_for_ready(timeout=_PATIENCE)
                await run(client, _WARM)
                if kernel_id not in self:
                    raise Gone
                self._ready[kernel_id] = client
                self._news.set()
        except Exception:
            self.log.exception(message("school.kernel-not-started"))
            await self.drop(kernel_id, client)
            self._fill_soon()
        finally:
            self._coming -= 1

    async def drop(self, kernel_id: str | None, client: AsyncKernelClient | None = None) -> None:
        """Be rid of a kernel, whatever has become of it."""
        if client:
            client.stop_channels()
        if kernel_id is not None:
            if kernel_id in self:
                with contextlib.suppress(Exception):
                    await self.shutdown_kernel(kernel_id, now=True)
            self.owners.pop(kernel_id, None)

    async def _take(self, end: float) -> tuple[str, AsyncKernelClient]:
        self._waiting += 1
        try:
            while time.monotonic() < end:
                self.fill()
                while self._ready:
                    kernel_id = next(iter(self._ready))
                    client = self._ready.pop(kernel_id)
                    if await client.is_alive():
                        return kernel_id, client
                    await self.drop(kernel_id, client)
                self._news.clear()
                with contextlib.suppress(TimeoutError):
                    await asyncio.wait_for(self._news.wait(), _LOOK)
            raise Busy
        finally:
            self._waiting -= 1

    # --- handed over -----------------------------------------------------------

    async def hand_over(self, learner: str, folder: Path) -> tuple[str, AsyncKernelClient]:
        """A kernel that is ready, working in its learner's folder.

        A kernel can have been killed a moment ago, by the system when memory
        is short, and still look alive; then the next one is taken.  Gives its
        id and an open line to it, to be closed by whom it is given to.

        Full when as many are in use as may be, Busy when none became ready in
        time, BadFile when the folder cannot be made.
        """
        if len(self.owners) + self._promised >= self.most:
            raise Full
        self._promised += 1
        try:
            end = time.monotonic() + _PATIENCE
            while True:
                kernel_id, client = await self._take(end)
                if await self._move_in(kernel_id, client, folder):
                    self.owners[kernel_id] = learner
                    return kernel_id, client
        finally:
            self._promised -= 1
            self._fill_soon()

    async def _move_in(self, kernel_id: str, client: AsyncKernelClient, folder: Path) -> bool:
        """Whether the kernel works in that folder now; it is gone otherwise."""
        try:
            await run(client, _MOVE_IN.format(folder=str(folder)))
            self.get_kernel(kernel_id).last_activity = datetime.now(UTC)
            return True
        except (Gone, web.HTTPError):  # dead, or found dead by who watches over kernels
            await self.drop(kernel_id, client)
            return False
        except Failed:  # the kernel is as good as before
            self._ready[kernel_id] = client
            raise BadFile(message("school.no-own-folder")) from None
        except BaseException:
            await self.drop(kernel_id, client)
            raise

    def remove_kernel(self, kernel_id: str) -> KernelManager:
        """Forget a kernel, and whose it was."""
        self.owners.pop(kernel_id, None)
        client = self._ready.pop(kernel_id, None)
        if client:
            client.stop_channels()
            self._fill_soon()
        return super().remove_kernel(kernel_id)

    def _handle_kernel_died(self, kernel_id: str) -> None:
        """Forget it at once, then clear up after it."""
        self.owners.pop(kernel_id, None)
        self._spawn(self.drop(kernel_id, self._ready.pop(kernel_id, None)))
        self._fill_soon()

    # --- left behind -------------------------------------------------------------

    def start_watching_activity(self, kernel_id: str) -> None:
        """Read nothing: a kernel with a page is in use, and one without has been left when the page went.

        To read along, as is usual, took as much of the server's time as all else it does for a slider.
        """
        kernel = self.get_kernel(kernel_id)
        kernel.execution_state, kernel.reason, kernel.last_activity = "idle", "", datetime.now(UTC)

    def notify_disconnect(self, kernel_id: str) -> None:
        """A page is gone or its network is cut: from now on it is waited for."""
        super().notify_disconnect(kernel_id)
        if kernel_id in self:
            self.get_kernel(kernel_id).last_activity = datetime.now(UTC)

    async def cull_kernel_if_idle(self, kernel_id: str) -> None:
        """Leave alone what is kept ready."""
        if kernel_id in self.owners:
            await super().cull_kernel_if_idle(kernel_id)

    def left(self, kernel_id: str) -> None:
        """A page says good-bye: its kernel goes soon, unless the page is still there."""
        asyncio.get_running_loop().call_later(_GRACE, lambda: self._spawn(self._let_go(kernel_id)))

    async def _let_go(self, kernel_id: str) -> None:
        if kernel_id not in self or self._kernel_connections.get(kernel_id, 0):
            return
        if datetime.now(UTC) - self.get_kernel(kernel_id).last_activity >= timedelta(seconds=_GRACE - 1):
            await self.shutdown_kernel(kernel_id, now=True)

    async def stop_filling(self) -> None:
        """Start no more kernels."""
        self._closing = True
        for task in tuple(self._tasks):
            task.cancel()
        await asyncio.gather(*self._tasks, return_exceptions=True)
        while self._ready:
            self._ready.popitem()[1].stop_channels()


class NoDelay(ZMQChannelsWebsocketConnection):
    """The usual connection, with small messages sent at once.

    By default a small message waits until the one before it is acknowledged
    (Nagle's algorithm), which holds every picture of a moving slider back by
    some 40 ms.
    """

    def connect(self) -> Any:
        """Connect as usual, after the socket was told not to wait."""
        self.websocket_handler.set_nodelay(True)
        return super().connect()


class PageConnection(NoDelay):
    """The websocket of a page; it closes when its kernel dies, and the page then says so."""

    def on_restart_failed(self) -> None:
        """Tell the page by hanging up."""
        super().on_restart_failed()
        self.websocket_handler.close(1001, "kernel gone")
