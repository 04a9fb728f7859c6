"""The one way an upload's request is turned down; its words are in ``static/words/photos.json``."""

from typing import Any

from inspect_app.entry.refusal import shown
from inspect_app.errors import Problem


class UploadRefused(Problem):
    """``code``, the ``field`` (a tus header or a member of its metadata), the offending ``value`` as short,
    safe text, and ``facts`` for the message, such as the ``declared`` and the ``found`` hash.

    Nothing recorded is lost by it: the photo stays on the phone, and what was received stays here unless the
    code is ``upload_hash_wrong``.
    """

    def __init__(self, code: str, field: str, value: object = None, **facts: Any) -> None:
        super().__init__(code, field, shown(value))
        self.facts = facts
