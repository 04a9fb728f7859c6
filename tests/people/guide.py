"""The table of rights in DEVELOPERS.md: ``python -m tests.people.guide`` prints it anew from ``people/rights.py``."""

from pathlib import Path

from inspect_app.people.rights import OFFICE, SAID, may, records
from inspect_app.people.roles import ROLES

ROOT = Path(__file__).parents[2]
NAMES = {
    "admits": "lets in what was kept apart", "exports": "report, trends, exports", "invites": "firms, invitations",
    "links": "reviewers' links", "revokes": "names and ends others' phones", "reads_trail": "reads the trail",
    "imports": "brings in saved copies", "countersigns": "countersigns reports",
}  # fmt: skip


def rows() -> list[str]:
    head = "| | " + " | ".join(ROLES) + " |"
    lines = [head, "|---|" + "---|" * len(ROLES)]
    said = {role: records(role) for role in ROLES}
    for kind in dict.fromkeys(kind for role in ROLES for kind in said[role]):
        lines.append(f"| says `{kind}` | " + " | ".join("yes" if kind in said[role] else "" for role in ROLES) + " |")
    for right in (*SAID, *OFFICE):
        cells = " | ".join("yes" if may(role, right) else "" for role in ROLES)
        lines.append(f"| {NAMES.get(right, right)} | {cells} |")
    return lines


if __name__ == "__main__":
    print(*rows(), sep="\n")
