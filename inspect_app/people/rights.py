"""What each role may do: the one table, printed in DEVELOPERS.md by ``python -m tests.people.guide``.

What is said in signed entries comes from the record's own table (``record/authority.py``), so that the two cannot
differ. What somebody sees depends on their firm: with areas of its own it sees those (``sight.py``), and then none of
the office's rights go with any role.
"""

from typing import Any

from inspect_app.people.roles import ROLES
from inspect_app.record.authority import MAY

SAID = {  # what is done by an entry, and by which
    "releases": ("release",),
    "rechecks": ("recheck",),
    "closes": ("recheck", "concession"),
    "concedes": ("concession",),
    "signs": ("signoff", "day"),
    "admits": ("admission",),
}
OFFICE = {  # what is done on the server, only by who sees the whole job
    "exports": ROLES,
    "invites": ("administrator",),
    "links": ("administrator",),
    "revokes": ("administrator",),
    "reads_trail": ("administrator",),
    "imports": ("administrator",),
    "countersigns": ("inspector", "reviewer", "administrator", "engineer", "owner"),
}


def records(role: str) -> list[str]:
    """The kinds of entry that a role may say, in the order of the record's table."""
    return [kind for kind in MAY if role in MAY[kind]]


def may(role: str, right: str, whole: bool = True) -> bool:
    """Whether a role has a right of ``SAID`` or ``OFFICE``. ``whole``: whether they see the whole job."""
    if right in SAID:
        granted = any(role in MAY[kind] for kind in SAID[right])
        return granted and (whole or right != "admits")
    return whole and role in OFFICE[right]


def rights(role: str, areas: list[str] | None) -> dict[str, Any]:
    """``{"role", "sees": "whole"|"areas", "areas", "records": [kinds], right: bool, …}`` of one member."""
    whole = areas is None
    told = {right: may(role, right, whole) for right in (*SAID, *OFFICE)}
    return {"role": role, "sees": "whole" if whole else "areas", "areas": areas, "records": records(role), **told}
