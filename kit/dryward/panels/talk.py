"""What the browser says to a page, and what it is told."""

import asyncio

from dryward.checks import PlainError

#: Seconds a slider must rest before a slow model runs in full.
REST = 0.25


class Talk:
    """The half of a page that hears and answers the browser; `page.Page` is the other."""

    slow = False

    # --- from the browser --------------------------------------------------------

    def moved(self, values, serial):
        """The browser moved a control: follow, without ever raising."""
        for name, value in values.items():
            if name in self.controls:
                try:
                    self.controls[name].put(value)
                    self._errors.pop(name, None)
                except PlainError as reason:
                    self._errors[name] = str(reason)
        self._seen = serial
        if self.slow and self._can_wait():
            self._quick()
        else:
            self.follow()

    def typed(self, name, text):
        """The browser sent a typed number: take it, or say what is wrong with it; None takes it back."""
        if text is None:
            self._errors.pop(name, None)
            self.send()
            return
        control = self.controls[name]
        try:
            control.put(control.read(text))
        except PlainError as reason:
            self._errors[name] = str(reason)
            self.send()
            return
        self._errors.pop(name, None)
        self._retype = name
        self.follow()
        self._retype = ""

    def follow(self):
        """Refresh for the browser: the page itself has said what went wrong."""
        try:
            self.refresh()
        except Exception as reason:
            self.desk.mishap(reason)

    # --- slow pages ------------------------------------------------------------

    def _can_wait(self):
        try:
            asyncio.get_running_loop()
        except RuntimeError:
            return False
        return True

    def _quick(self):
        """Draw the preview now, and all of it once the slider has rested."""
        self._stop_waiting()
        self._waiting = asyncio.get_running_loop().call_later(REST, self.follow)
        try:
            state = self.preview(self.at)
            if state is not None:
                self._take(state, full=False)
            self.trouble = ""
        except PlainError as reason:
            self.trouble = str(reason)
        except Exception as reason:
            self.desk.mishap(reason)
        self.send()

    def _stop_waiting(self):
        if self._waiting is not None:
            self._waiting.cancel()
            self._waiting = None

    # --- to the browser -----------------------------------------------------------

    def send(self):
        """Send the present state to the browser."""
        # In one message, so that no curve is ever seen over the axis of another.
        with self.widget.hold_sync():
            self.widget.live = {
                "seen": self._seen,
                "values": {name: control.value for name, control in self.controls.items()},
                "errors": dict(self._errors),
                "retype": self._retype,
                "strips": self._strips,
                "drawn": self._drawings,
                "pictures": [moving for _, moving in self.layers],
                "alts": list(self.alts),
                "readouts": [each.shown(self.unit_system) for each in self.readout_list if not each.hidden],
                "sentence": self.sentence,
                "state": self.verdict.state if self.verdict else "",
                "trouble": self.trouble,
                "steps": self.desk.steps(),
                "busy": self._waiting is not None,
            }
            self.widget.grounds = [ground for ground, _ in self.layers]

    def send_bench(self):
        """Show the bench anew."""
        self.widget.bench = {"sections": [each for each in self.bench() if each]}
