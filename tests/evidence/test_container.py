"""The signature's own bytes, which no signature covers: every digit of them is accounted for."""

import io

import pytest
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign.validation import validate_pdf_signature
from pyhanko_certvalidator import ValidationContext

from inspect_app.apart import apart
from inspect_app.evidence.container import container_faults
from inspect_app.evidence.der import canonical
from inspect_app.evidence.hole import hole
from tests.evidence.sealed import sealed
from tests.evidence.test_verify import hole_of


def container() -> bytes:
    first, second = hole_of(sealed())
    der, reason = hole(sealed(), [0, first, second, len(sealed()) - second])
    assert der is not None, reason
    return der


def signature_agrees(data: bytes) -> bool:
    """Whether an outside validator takes the signature of this file for whole."""
    try:
        embedded = PdfFileReader(io.BytesIO(data), strict=False).embedded_signatures[0]
        own = ValidationContext(trust_roots=[])
        status = apart(lambda: validate_pdf_signature(embedded, own, skip_diff=True))
        return bool(status.intact and status.valid)
    except Exception:
        return False


def let_through() -> list[tuple[int, int, bytes]]:
    """All single-bit changes of the hole's text that our own rules let pass: (place, bit, changed file)."""
    data = sealed()
    first, second = hole_of(data)
    ranges = [0, first, second, len(data) - second]
    left = []
    for at in range(first, second):
        for bit in range(8):
            changed = data[:at] + bytes([data[at] ^ (1 << bit)]) + data[at + 1 :]
            der, _ = hole(changed, ranges)
            if der is not None and container_faults(der) == ([], []):
                left.append((at, bit, changed))
    return left


def test_the_container_as_made_has_no_fault():
    assert container_faults(container()) == ([], [])
    assert signature_agrees(sealed())


def test_of_all_single_bit_changes_of_the_hole_none_passes_both_its_rules_and_the_signature():
    """Every bit. Most fall to the rules at once; the rest are in what the signature itself judges."""
    left = let_through()
    assert left, "the signature's value is only for the signature to judge"
    # Those at the edges, and a spread of the others here; every one of them under soak.
    tried = [*left[:8], *left[-8:], *left[:: max(len(left) // 60, 1)]]
    assert [(at, bit) for at, bit, changed in tried if signature_agrees(changed)] == []


@pytest.mark.soak
def test_every_change_that_the_rules_let_through_breaks_the_signature():
    assert [(at, bit) for at, bit, changed in let_through() if signature_agrees(changed)] == []


@pytest.mark.parametrize("der", ["020100", "02020080", "0500", "0101ff", "30050201000500", "a003020105", "0203ff7fff"])
def test_values_in_their_one_form_are_canonical(der):
    assert canonical(bytes.fromhex(der))


@pytest.mark.parametrize(
    "der",
    [
        "02020001",
        "0202ff80",
        "0200",
        "050100",
        "010101",
        "3003020100ff",
        "30040201",
        "308000000000",
        "1f8101",
        "30060201000500",
    ],
)
def test_any_other_form_is_not(der):
    assert not canonical(bytes.fromhex(der))


@pytest.mark.parametrize(
    "ranges",
    [
        [],
        [0, 1],
        [1, 2, 3, 4],
        [0, 5, 5, 1],
        [0, 6, 5, 1],
        [0, 1, 9, 99],
        [0, -1, 2, 3],
        [0, True, 4, 1],
        ["0", 1, 4, 1],
    ],
)
def test_ranges_that_do_not_fit_are_refused(ranges):
    assert hole(b"<3000>....", ranges) == (None, "bad_ranges")


@pytest.mark.parametrize(
    ("text", "reason"),
    [(b"<30g0>", "not_hexadecimal"), (b"(3000)", "not_hexadecimal"), (b"<300>", "not_hexadecimal"),
     (b"<3000 >", "not_hexadecimal"),
     (b"<aA00>", "not_hexadecimal"), (b"<0000>", "bad_container"), (b"<300001>", "padding_not_zero")],
)  # fmt: skip
def test_only_one_form_of_the_hole_is_taken(text, reason):
    data = b"x" + text + b"y"
    assert hole(data, [0, 1, 1 + len(text), 1]) == (None, reason)
