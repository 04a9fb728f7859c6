"""The signature's own bytes, which no signature covers: every digit of them is accounted for."""

import io

import pytest
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign.validation import validate_pdf_signature
from pyhanko_certvalidator import ValidationContext

from inspect_app.evidence.container import container_faults
from inspect_app.evidence.der import canonical, der_length
from inspect_app.evidence.hole import hole
from tests.evidence.sealed import sealed
from tests.evidence.test_verify import hole_of


def container() -> bytes:
    first, second = hole_of(sealed())
    der, reason = hole(sealed(), [0, first, second, len(sealed()) - second])
    assert der is not None, reason
    return der


def signature_agrees(der: bytes) -> bool:
    """Whether an outside validator would take a report with this container in its hole."""
    first, second = hole_of(sealed())
    text = der.hex().upper().encode().ljust(second - first - 2, b"0")
    data = sealed()[: first + 1] + text + sealed()[second - 1 :]
    try:
        embedded = PdfFileReader(io.BytesIO(data), strict=False).embedded_signatures[0]
        status = validate_pdf_signature(embedded, ValidationContext(trust_roots=[]), skip_diff=True)
        return bool(status.intact and status.valid)
    except Exception:
        return False


def test_the_container_as_made_has_no_fault():
    assert container_faults(container()) == ([], [])
    assert signature_agrees(container())


def test_of_all_single_bit_changes_none_passes_both_the_container_s_rules_and_the_signature():
    """Every bit of the container. Most fall to the rules at once; the rest must break the signature."""
    der = container()
    left = []
    for at in range(len(der)):
        for bit in range(8):
            changed = der[:at] + bytes([der[at] ^ (1 << bit)]) + der[at + 1 :]
            if container_faults(changed) == ([], []):
                left.append(changed)
    assert left, "the signature value itself is only for the signature to judge"
    # Each is a 15 ms validation: a spread of them here, every one of them under soak.
    assert [changed for changed in left[:: max(len(left) // 60, 1)] if signature_agrees(changed)] == []


@pytest.mark.soak
def test_every_change_that_the_rules_let_through_breaks_the_signature():
    der = container()
    for at in range(len(der)):
        for bit in range(8):
            changed = der[:at] + bytes([der[at] ^ (1 << bit)]) + der[at + 1 :]
            assert container_faults(changed) != ([], []) or not signature_agrees(changed), (at, bit)


@pytest.mark.parametrize(
    ("raw", "length"),
    [(b"", None), (b"\x30", None), (b"\x31\x00", None), (b"\x30\x00", 2), (b"\x30\x02ab", 4), (b"\x30\x03ab", None),
     (b"\x30\x81\x05abcde", None), (b"\x30\x81\x80" + b"x" * 128, 131), (b"\x30\x82\x00\x80" + b"x" * 128, None),
     (b"\x30\x80ab\0\0", None), (b"\x30\x85" + b"\1" * 9, None)],
)  # fmt: skip
def test_only_a_der_length_is_a_length(raw, length):
    assert der_length(raw) == length


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
