"""An office whose job has the invented scenario's two roofs, assemblies and every released checklist."""

from itertools import count
from pathlib import Path

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.format import format_entry
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.jws import parse_jws
from inspect_app.entry.uuid7 import uuid7
from inspect_app.intake.job_file import read_yaml, sayings
from tests.browser.office import AT, JOB, Office

SCENARIO = Path(__file__).parents[2] / "inspect_app" / "demo" / "scenario.yaml"
STARTED = 1795642805000


class ScreenOffice(Office):
    """As ``Office``; the job is the scenario's."""

    def _open_job(self, definitions: dict[str, str]) -> None:
        key = ec.generate_private_key(ec.SECP256R1())
        self.parts.devices.enrol(self.accounts["cato"], public_jwk(key), "office")
        numbers = count()
        page = read_yaml(SCENARIO.read_text("utf-8"))

        def new_id() -> str:
            number = next(numbers)
            return self.job if number == 0 else uuid7(STARTED + number, bytes([number]) * 10)

        tokens, previous = [], None
        for seq, one in enumerate(sayings(page, self.parts.definitions.newest(), new_id)):
            payload = {
                "v": 1, "id": uuid7(STARTED + 500 + seq, bytes([seq]) * 10), "kind": one.kind, "job": JOB,
                "subject": one.subject, "replaces": [], "at": AT, "seq": seq, "prev": previous,
                "clock": {"monotonic": seq, "server": None, "age": None, "zone": ""},
                "by": self.people["cato"], "build": "test", "body": one.body,
            }  # fmt: skip
            tokens.append(format_entry(payload, key))
            previous = parse_jws(tokens[-1], "seamwalk-entry").digest
        answers = self.parts.batches.receive(tokens)
        assert [answer.status for answer in answers] == ["accepted"] * len(tokens), answers
