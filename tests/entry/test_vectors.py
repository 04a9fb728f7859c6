"""The vector files that Python and JavaScript share."""

import importlib.util
import sys

import pytest

from inspect_app.entry.accept import Accepted, accept
from inspect_app.entry.format import TYPE, parse
from inspect_app.entry.jws import parse_jws, verify
from inspect_app.entry.refusal import Refused

from .known import BEN_KID, ENTRIES, KEYS, MEMBERS, VECTORS, facts, judged, nothing_held


def by_name(section: str) -> list[object]:
    return [pytest.param(row, id=row["name"]) for row in ENTRIES[section]]


@pytest.mark.parametrize("row", by_name("good"))
def test_a_good_entry_is_accepted_under_its_digest(row: dict[str, str]) -> None:
    outcome = judged(row["token"])
    assert isinstance(outcome, Accepted), outcome
    assert outcome.entry.digest == row["digest"]
    assert outcome.entry.token == row["token"], "what is stored is what was received, to the byte"


@pytest.mark.parametrize("row", by_name("good"))
def test_bytes_and_text_of_a_good_entry_are_the_same_entry(row: dict[str, str]) -> None:
    assert parse(row["token"].encode("ascii")) == parse(row["token"])


@pytest.mark.parametrize("row", [*by_name("bad_tokens"), *by_name("bad_payloads")])
def test_a_bad_entry_is_refused_with_its_code_and_field(row: dict[str, str]) -> None:
    # Only Ada's key is enrolled here: one vector comes from a key that nobody knows.
    keys = {kid: key for kid, key in KEYS.items() if kid != BEN_KID}
    assert facts(accept(row["token"], keys, MEMBERS, nothing_held)) == (row["code"], row["field"])


@pytest.mark.parametrize("row", by_name("bad_payloads"))
def test_a_bad_payload_is_refused_for_its_content_not_for_its_signature(row: dict[str, str]) -> None:
    verify(parse_jws(row["token"], TYPE), ENTRIES["jwk"])
    with pytest.raises(Refused):
        parse(row["token"])


def test_the_generator_still_writes_the_released_vectors(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.syspath_prepend(str(VECTORS))
    spec = importlib.util.spec_from_file_location("make_entries", VECTORS / "make_entries.py")
    assert spec and spec.loader
    module = importlib.util.module_from_spec(spec)
    monkeypatch.setitem(sys.modules, "make_entries", module)
    spec.loader.exec_module(module)
    for name, make in module.FILES.items():
        assert module.written(make()) == (VECTORS / name).read_text(encoding="ascii"), name
