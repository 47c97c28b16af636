"""Python processes kept ready: any lesson opens on one, and it goes when its learner has left."""

import asyncio
import os
from contextvars import ContextVar
from datetime import UTC, datetime, timedelta

from jupyter_server.services.kernels.kernelmanager import AsyncMappingKernelManager
from traitlets import Integer

from dryward.cli.jupyter.websocket import NoDelay

#: The learner for whom a kernel is asked, with the folder it works in.
WHOSE = ContextVar("whose")

#: What takes time at the start of every lesson, done before anybody waits for it.
_WARM = """
import os as _os, dryward.panels.page, dryward.pictures.live, dryward.teaching.lessons, dryward.teaching.questions
from dryward.physics import steady as _steady
dryward.teaching.lessons.lessons()
"""
_MOVE_IN = "_os.makedirs({folder!r}, exist_ok=True); _os.chdir({folder!r}); del _os, _steady"
#: Seconds after a kernel was taken before the next one is started: the page it was taken for comes first.
_REFILL = 1.0
#: Seconds within which a kernel must be ready.
_PATIENCE = 120
#: Seconds a page that says good-bye may still come back, by the browser's back key or a download.
_GRACE = 10


class Full(Exception):
    """No place is left."""


class Kernels(AsyncMappingKernelManager):
    """Kernels with the kit already loaded, handed to learners one by one."""

    ready_size = Integer(4, config=True, help="Kernels kept ready")
    most = Integer(60, config=True, help="Most kernels in use at once")

    def __init__(self, **kwargs):
        super().__init__(**kwargs)
        self.owners = {}
        self._ready, self._coming, self._waiting = asyncio.Queue(), 0, 0
        # A few at a time: the first learners have theirs while the others' are still loading.
        self._few = asyncio.Semaphore((os.cpu_count() or 1) + 1)
        self._tasks = set()

    # --- kept ready ----------------------------------------------------------

    def fill(self):
        """Start as many kernels as are waited for, and as many as are to be ready."""
        for _ in range(self.ready_size + self._waiting - self._ready.qsize() - self._coming):
            self._coming += 1
            self._spawn(self._start_one())

    def _spawn(self, coroutine):
        task = asyncio.get_running_loop().create_task(coroutine)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)

    async def _start_one(self):
        try:
            async with self._few:
                kernel_id = await super()._async_start_kernel()
                client = self.get_kernel(kernel_id).client()
                client.start_channels()
                await client.wait_for_ready(timeout=_PATIENCE)
                await _run(client, _WARM)
                self._ready.put_nowait((kernel_id, client))
        except Exception:
            self.log.exception("A kernel could not be started")
        finally:
            self._coming -= 1

    async def _take(self):
        self._waiting += 1
        try:
            while True:
                self.fill()
                kernel_id, client = await asyncio.wait_for(self._ready.get(), _PATIENCE)
                if kernel_id in self and await self.get_kernel(kernel_id).is_alive():
                    return kernel_id, client
                client.stop_channels()
        finally:
            self._waiting -= 1
            asyncio.get_running_loop().call_later(_REFILL, self.fill)

    # --- handed over -----------------------------------------------------------

    async def start_kernel(self, **asked):
        """Hand over a kernel that is ready, working in its learner's folder.

        Raises
        ------
        Full
            When as many are in use as may be.
        """
        learner, folder = WHOSE.get()
        if len(self.owners) >= self.most:
            raise Full
        kernel_id, client = await self._take()
        try:
            await _run(client, _MOVE_IN.format(folder=str(folder)))
        finally:
            client.stop_channels()
        self.owners[kernel_id] = learner
        self.get_kernel(kernel_id).last_activity = datetime.now(UTC)
        return kernel_id

    def remove_kernel(self, kernel_id):
        """Forget a kernel, and whose it was."""
        self.owners.pop(kernel_id, None)
        return super().remove_kernel(kernel_id)

    # --- left behind -------------------------------------------------------------

    def notify_disconnect(self, kernel_id):
        """A page is gone or its network is cut: from now on it is waited for."""
        super().notify_disconnect(kernel_id)
        if kernel_id in self:
            self.get_kernel(kernel_id).last_activity = datetime.now(UTC)

    async def cull_kernel_if_idle(self, kernel_id):
        """Leave alone what is kept ready."""
        if kernel_id in self.owners:
            await super().cull_kernel_if_idle(kernel_id)

    def left(self, kernel_id):
        """A page says good-bye: its kernel goes soon, unless the page is still there."""
        asyncio.get_running_loop().call_later(_GRACE, lambda: self._spawn(self._let_go(kernel_id)))

    async def _let_go(self, kernel_id):
        if kernel_id not in self or self._kernel_connections.get(kernel_id, 0):
            return
        if datetime.now(UTC) - self.get_kernel(kernel_id).last_activity >= timedelta(seconds=_GRACE - 1):
            await self.shutdown_kernel(kernel_id, now=True)

    async def stop_filling(self):
        """Start no more kernels."""
        self.ready_size = 0
        for task in tuple(self._tasks):
            task.cancel()
        await asyncio.gather(*self._tasks, return_exceptions=True)
        while not self._ready.empty():
            self._ready.get_nowait()[1].stop_channels()


async def _run(client, code):
    reply = await client.execute(code, silent=True, store_history=False, allow_stdin=False, reply=True, timeout=60)
    if reply["content"]["status"] != "ok":
        raise RuntimeError(f"{reply['content'].get('ename')}: {reply['content'].get('evalue')}")


class PageConnection(NoDelay):
    """The websocket of a page; it closes when its kernel dies, and the page then says so."""

    def on_restart_failed(self):
        """Tell the page by hanging up."""
        super().on_restart_failed()
        self.websocket_handler.close(1001, "kernel gone")
