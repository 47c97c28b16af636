"""A learner without a browser: opens a lesson and moves a slider by the browser's own messages."""

import asyncio
import json
import math
import re
import time
import uuid
from datetime import UTC, datetime

from jupyter_server.services.kernels.connection.base import deserialize_msg_from_ws_v1, serialize_msg_to_ws_v1
from tornado.httpclient import AsyncHTTPClient, HTTPRequest
from tornado.websocket import websocket_connect

PROTOCOL = "v1.kernel.websocket.jupyter.org"


def _pack(thing):
    return json.dumps(thing).encode()


class Visitor:
    """One learner at one lesson.

    Parameters
    ----------
    address : str
        Of the server, with a slash at the end.
    cookies : str
    lesson : str
        Id.
    """

    def __init__(self, address, cookies, lesson="where-it-gets-wet"):
        self.address, self.cookies, self.lesson = address, cookies, lesson
        self.live, self.frame, self.seen, self.pictures = {}, {}, 0, 0
        self.session, self.serial, self.socket = uuid.uuid4().hex, 0, None
        self.changed = asyncio.Event()
        self.reading = None

    async def open(self):
        """Fetch the page, connect, ask for the widget's state; seconds until it is there."""
        begin = time.perf_counter()
        answer = await AsyncHTTPClient().fetch(
            HTTPRequest(
                f"{self.address}lesson/{self.lesson}",
                headers={"Cookie": self.cookies},
                request_timeout=180,
                connect_timeout=180,
            )
        )
        page = answer.body.decode()
        self.kernel = json.loads(re.search(r'"jupyter-config-data"[^>]*>(.*?)</script>', page, re.S).group(1))[
            "kernelId"
        ]
        output = json.loads(re.search(r"cell-output\+json\">(.*?)</script>", page, re.S).group(1))
        self.model = output["data"]["application/vnd.jupyter.widget-view+json"]["model_id"]
        await self.connect()
        await self.wait(lambda: "values" in self.live and self.frame.get("controls"), 60)
        self.send("comm_msg", {"comm_id": self.model, "data": {"method": "custom", "content": {"kind": "opened"}}})
        return time.perf_counter() - begin

    async def connect(self):
        """Open the websocket, and ask for the state as a page does."""
        await self.close()
        where = self.address.replace("http", "ws", 1) + f"api/kernels/{self.kernel}/channels?session_id={self.session}"
        self.socket = await websocket_connect(
            HTTPRequest(where, headers={"Cookie": self.cookies, "Origin": self.address.rstrip("/")}),
            subprotocols=[PROTOCOL],
            max_message_size=50_000_000,
        )
        self.reading = asyncio.ensure_future(self._read())
        control = uuid.uuid4().hex
        self.send(
            "comm_open", {"comm_id": control, "target_name": "jupyter.widget.control", "data": {}}, version="1.0.0"
        )
        self.send("comm_msg", {"comm_id": control, "data": {"method": "request_states"}})

    def send(self, kind, content, **metadata):
        """Send one message."""
        header = {
            "msg_id": uuid.uuid4().hex,
            "msg_type": kind,
            "session": self.session,
            "username": "",
            "date": datetime.now(UTC).isoformat(),
            "version": "5.4",
        }
        message = {"header": header, "parent_header": {}, "metadata": metadata, "content": content, "buffers": []}
        data = serialize_msg_to_ws_v1(message, "shell", pack=_pack)
        self.socket.write_message(b"".join(data) if isinstance(data, list) else bytes(data), binary=True)

    async def _read(self):
        while True:
            raw = await self.socket.read_message()
            if raw is None:
                return
            if isinstance(raw, str):
                continue
            _, parts = deserialize_msg_from_ws_v1(raw)
            kind = json.loads(bytes(parts[0]))["msg_type"]
            if kind != "comm_msg":
                continue
            content = json.loads(bytes(parts[3]))
            data = content["data"]
            if data.get("method") == "update_states":
                self._take(data["states"].get(self.model, {}).get("state", {}))
            elif content["comm_id"] == self.model and data.get("method") == "update":
                self.pictures += len(parts) > 4
                self._take(data["state"])

    def _take(self, state):
        self.frame = state.get("frame", self.frame)
        if "live" in state:
            self.live = state["live"]
            self.seen = max(self.seen, self.live.get("seen", 0))
        self.changed.set()

    async def wait(self, holds, seconds=30):
        """Until something holds."""
        end = time.monotonic() + seconds
        while not holds():
            self.changed.clear()
            if holds():
                return
            await asyncio.wait_for(self.changed.wait(), max(end - time.monotonic(), 0.001))

    async def predict(self, choice=0):
        """Make the prediction, and go on to the free page, the first choice of every later bet."""
        self.say({"kind": "predict", "choice": choice})
        await self.wait(lambda: self.frame["prediction"]["chosen"] == choice and not self.frame["locked"])
        while (stage := self.frame["stage"] or {}) and stage["at"] < stage["count"]:
            if any(each["open"] for each in stage["bets"]):
                self.say({"kind": "bet", "choice": 0})
            else:
                self.say({"kind": "beat", "number": stage["at"] + 1})
            await self.wait(lambda before=stage: self.frame["stage"] is not before)
        await self.wait(lambda: self.live["sentence"] and self.frame["questions"])

    def say(self, content):
        """Send what a click sends."""
        self.send("comm_msg", {"comm_id": self.model, "data": {"method": "custom", "content": content}})

    def move(self, **values):
        """Move sliders, without waiting."""
        self.serial = max(self.serial, self.seen) + 1
        moves = {"serial": self.serial, "system": self.frame["system"], "values": {**self.live["values"], **values}}
        state = {"method": "update", "state": {"moves": moves}, "buffer_paths": []}
        self.send("comm_msg", {"comm_id": self.model, "data": state})
        return self.serial

    async def moved(self, **values):
        """Move sliders and wait for the picture; seconds it took."""
        begin = time.perf_counter()
        serial = self.move(**values)
        await self.wait(lambda: self.seen >= serial)
        return time.perf_counter() - begin

    def sliders(self):
        """The sliders as the page has them."""
        return [each for each in self.frame["controls"] if "left" in each]

    def slider(self):
        """Name, left end and right end of the first slider."""
        first = self.sliders()[0]
        return first["name"], first["left"], first["right"]

    def place(self, slider):
        """Where a slider stands, 0 at its left end to 1 at its right."""
        value, left, right = self.live["values"][slider["name"]], slider["left"], slider["right"]
        return math.log(value / left) / math.log(right / left) if slider["log"] else (value - left) / (right - left)

    def at(self, slider, place):
        """The value at a place along a slider."""
        left, right = slider["left"], slider["right"]
        return left * (right / left) ** place if slider["log"] else left + (right - left) * place

    async def close(self):
        """Close the browser, without good-bye."""
        if self.socket:
            self.socket.close()
        if self.reading:
            await asyncio.wait([self.reading], timeout=5)
