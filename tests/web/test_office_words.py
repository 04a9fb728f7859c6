"""What the office tells of is said on its screens: each step of the trail, each side, role, right and state."""

import json
from pathlib import Path

from inspect_app.people.firms import SIDES
from inspect_app.people.rights import OFFICE, SAID
from inspect_app.people.roles import ROLES
from inspect_app.people.trail import WHAT
from inspect_app.record.authority import MAY

WORDS = Path(__file__).parents[2] / "static" / "words"
STATES = ("open", "used", "expired", "withdrawn")  # of an invitation or a link


def test_every_step_side_role_right_kind_and_state_has_its_words():
    words = {key for file in WORDS.glob("*.json") for key in json.loads(file.read_text("utf-8"))}
    asked = {f"trail.{one}" for one in WHAT} | {f"right.{one}" for one in (*SAID, *OFFICE)}
    asked |= {f"side.{one}{more}" for one in SIDES for more in ("", ".under")}
    asked |= {f"role.{one}{more}" for one in ROLES for more in ("", ".does")}
    asked |= {f"kind.{one}" for one in MAY} | {f"link.{one}" for one in STATES} | {"apart.reason.key_revoked"}
    assert len(asked) > 60 and asked - words == set()
