"""The kernel's websocket without waiting.

By default a small message waits until the one before it is acknowledged
(Nagle's algorithm), which holds every picture of a moving slider back by
some 40 ms.
"""

from jupyter_server.services.kernels.connection.channels import ZMQChannelsWebsocketConnection


class NoDelay(ZMQChannelsWebsocketConnection):
    """The usual connection, with small messages sent at once."""

    def connect(self):
        """Connect as usual, after the socket was told not to wait."""
        self.websocket_handler.set_nodelay(True)
        return super().connect()
