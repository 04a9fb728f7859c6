"""Identifiers."""

import pytest

from inspect_app.entry.refusal import Refused
from inspect_app.entry.uuid7 import any_uuid, uuid7, version7


def test_the_example_of_rfc_9562_appendix_a_6() -> None:
    # The version and variant bits are the function's; the rest of the example's random bits are given.
    random = bytes.fromhex("0cc318c4dc0c0c07398f")
    assert uuid7(0x017F22E279B0, random) == "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"


def test_identifiers_sort_by_time() -> None:
    made = [uuid7(time, bytes([255 - time % 256]) * 10) for time in (0, 1, 255, 256, 2**47, 2**48 - 1)]
    assert made == sorted(made)


def test_too_little_randomness_or_a_time_beyond_48_bits_is_our_own_mistake() -> None:
    for time, random in ((0, bytes(9)), (-1, bytes(10)), (2**48, bytes(10))):
        with pytest.raises(RuntimeError):
            uuid7(time, random)


def test_only_one_spelling_is_an_identifier() -> None:
    good = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"
    version7(good, "id")
    any_uuid(good.replace("-7cc3", "-4cc3"), "id")
    for bad in (good.upper(), f"{{{good}}}", good + "\n", good.replace("-98c4", "-18c4"), "", None, 7):
        with pytest.raises(Refused):
            any_uuid(bad, "id")
    with pytest.raises(Refused):
        version7(good.replace("-7cc3", "-4cc3"), "id")
