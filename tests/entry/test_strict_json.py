"""JSON that cannot be read in two ways."""

import json
from typing import Any

import pytest
from hypothesis import given, seed, settings

from inspect_app.entry.refusal import Refused
from inspect_app.entry.strict_json import parse

from .wild import objects


@seed(20261125)
@settings(max_examples=150, deadline=None, database=None)
@given(objects)
def test_every_object_without_traps_is_read_as_any_reader_reads_it(value: dict[str, Any]) -> None:
    for ascii_only in (True, False):
        assert parse(json.dumps(value, ensure_ascii=ascii_only).encode("utf-8"), "payload") == value


@seed(20261125)
@settings(max_examples=100, deadline=None, database=None)
@given(objects)
def test_every_cut_of_a_document_is_refused(value: dict[str, Any]) -> None:
    data = json.dumps(value, ensure_ascii=False).encode("utf-8")
    for length in {0, 1, len(data) // 3, len(data) // 2, len(data) - 1} - {len(data)}:
        with pytest.raises(Refused):
            parse(data[:length], "payload")


def test_a_document_of_brackets_is_refused_at_once_and_without_a_traceback() -> None:
    for data in (b"[" * 60000, b'{"a":' * 12000, b'{"a":"' + b"\\" * 60000, b'"' * 60000):
        with pytest.raises(Refused):
            parse(data, "payload")


@pytest.mark.parametrize("inside", [b"[" * 40, b'\\"' * 24000 + b"[" * 40, b"[" * 40 + b"\\"])
def test_a_string_that_never_ends_is_read_once_to_the_end(inside: bytes) -> None:
    """A reader that gave it up at its first quote would try all the others too, and count brackets inside it."""
    with pytest.raises(Refused) as caught:
        parse(b'{"a":"' + inside, "payload")
    assert caught.value.code == "malformed"


def test_a_number_of_sixty_thousand_digits_is_refused_and_shown_short() -> None:
    with pytest.raises(Refused) as caught:
        parse(b'{"a":' + b"9" * 60000 + b"}", "payload")
    assert caught.value.code == "bad_number"
    assert len(caught.value.value) == 120
