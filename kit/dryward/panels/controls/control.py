"""What every control of a page has: a value that may be set by hand."""


class Control:
    """Base of a slider and a choice.

    Attributes
    ----------
    value : float or str
        As it is shown; setting it checks it and moves the page.
    moved : callable or None
        Called after the value was set by hand.
    """

    moved = None
    _value = None

    @property
    def value(self):
        """As it is shown."""
        return self._value

    @value.setter
    def value(self, value):
        self.put(value)
        if self.moved:
            self.moved()

    def put(self, value):
        """Set the value and tell nobody."""
        raise NotImplementedError
