"""Domain errors: bad data with its facts. Our own misuse is a ``RuntimeError`` instead.

``code`` is a key of the texts (``error.CODE.message`` and ``error.CODE.way_out``); ``field`` and ``value``
say what it is about. ``inspect_app.web.errors`` turns each class into its HTTP status.
"""


class Problem(Exception):
    """Anything a person has to be told, as facts; never raised itself."""

    def __init__(self, code: str, field: str = "", value: object = None) -> None:
        super().__init__(code, field, value)
        self.code = code
        self.field = field
        self.value = value


class BadInput(Problem):
    """Something given cannot be taken: the field and the value at fault."""


class NotSignedIn(Problem):
    """Nobody is signed in, or the token is not (or no longer) good."""


class NotAllowed(Problem):
    """Known, but this may not be done."""


class NotFound(Problem):
    """There is no such thing, or none that this person may know of."""


class Gone(Problem):
    """It was there, and ended: used, withdrawn or expired."""


class Conflict(Problem):
    """It contradicts what is held already."""


class TooLarge(Problem):
    """More bytes or more items than one request may carry."""


class TooOften(Problem):
    """Asked again too soon; ``value`` is the number of seconds to wait."""


class Busy(Problem):
    """As many do it now as may at a time; ``value`` is the number of seconds after which to try again."""


class StorageFull(Problem):
    """The disk is full or failing: nothing was kept, so no receipt is given."""


class StorageBusy(Problem):
    """The store cannot be reached now; the same request may be sent again."""
