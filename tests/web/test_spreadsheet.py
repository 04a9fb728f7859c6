"""No cell begins a formula, whatever nobody sees stands before its sign."""

import pytest

from inspect_app.web.spreadsheet import harmless


@pytest.mark.parametrize("before", ["", "\t", "\r", "\n", " ", "\ufeff", "\u200b", "\u00ad", "\u2060", "\u202e", "\x01",
                                    "a;", "a\u2028"])  # fmt: skip
@pytest.mark.parametrize("sign", ["=", "+", "-", "@", "\uff1d", "\ufe66", "\ufe62"])
def test_a_sign_that_would_begin_a_formula_has_an_apostrophe_before_it(before: str, sign: str) -> None:
    assert harmless(f"{before}{sign}1") == f"{before}'{sign}1"


def test_a_sign_within_a_word_stays_as_it_is() -> None:
    assert harmless("24-ga x=1 a@b") == "24-ga x=1 a@b"
