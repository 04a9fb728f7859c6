"""The one way in which the rulebook says that it cannot take an input."""


class Refused(Exception):
    """Input that cannot be judged.

    ``code`` names the reason (its words are ``refused.CODE`` in ``static/words/rules.json``), ``field`` the
    input, as in ``gaps[2]``, and ``value`` what was given there (None when nothing was). ``accepted``: the least and
    the most of a bare number that the rule itself bounds.
    """

    def __init__(self, code: str, field: str, value: object = None, accepted: "tuple | None" = None) -> None:
        super().__init__(code, field, value)
        self.accepted = accepted
        self.code = code
        self.field = field
        self.value = value
