"""Lets a kernel run a line of the server's own, and notices when it dies meanwhile."""

import time
from queue import Empty

#: Seconds between two looks whether the kernel still lives, and seconds it may take.
_LOOK, _LONGEST = 0.5, 60


class Gone(Exception):
    """The kernel died, or does not answer."""


class Failed(Exception):
    """The kernel lives, but what it was told went wrong."""


async def run(client, code):
    """Let a kernel run a line.

    Parameters
    ----------
    client : AsyncKernelClient
    code : str

    Raises
    ------
    Gone
        When the kernel died, or takes longer than a minute.
    Failed
        When the line went wrong.
    """
    asked, end = client.execute(code, silent=True, store_history=False, allow_stdin=False), time.monotonic() + _LONGEST
    while True:
        try:
            reply = await client.get_shell_msg(timeout=_LOOK)
        except Empty:
            # Killed by the system a moment ago, it still looks alive: so this is asked until the answer comes.
            if time.monotonic() > end or not await client.is_alive():
                raise Gone from None
            continue
        if reply["parent_header"].get("msg_id") == asked:
            break
    if reply["content"]["status"] != "ok":
        raise Failed(reply["content"].get("evalue") or reply["content"]["status"])
