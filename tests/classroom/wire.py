"""A cable between browser and server that can be pulled."""

import asyncio
import contextlib
import threading

from served import free_port


class Wire:
    """Passes everything on to a server, until it is cut.

    Parameters
    ----------
    port : int
        Of the server.
    """

    def __init__(self, port):
        self.port, self.here = port, free_port()
        self._loop, self._ends, self._whole = asyncio.new_event_loop(), set(), True
        self._thread = threading.Thread(target=self._loop.run_forever, daemon=True)

    def __enter__(self):
        self._thread.start()
        self._server = asyncio.run_coroutine_threadsafe(
            asyncio.start_server(self._join, "127.0.0.1", self.here), self._loop
        ).result(10)
        return self

    def __exit__(self, *why):
        self._loop.call_soon_threadsafe(self._server.close)
        self.cut()
        self._loop.call_soon_threadsafe(self._loop.stop)
        self._thread.join(10)
        self._loop.close()

    async def _join(self, reader, writer):
        if not self._whole:
            writer.transport.abort()
            return
        try:
            far_reader, far_writer = await asyncio.open_connection("127.0.0.1", self.port)
        except OSError:
            writer.transport.abort()
            return
        self._ends |= {writer, far_writer}
        await asyncio.gather(self._pass(reader, far_writer), self._pass(far_reader, writer))
        self._ends -= {writer, far_writer}

    async def _pass(self, reader, writer):
        with contextlib.suppress(OSError):
            while data := await reader.read(65536):
                writer.write(data)
                await writer.drain()
        with contextlib.suppress(OSError, RuntimeError):
            writer.close()

    def cut(self):
        """Pull it: what is open breaks, and nothing new goes through."""
        self._whole = False
        done = threading.Event()

        def all_of_it():
            for end in tuple(self._ends):
                end.transport.abort()
            done.set()

        self._loop.call_soon_threadsafe(all_of_it)
        done.wait(5)

    def mend(self):
        """Plug it in again."""
        self._whole = True
