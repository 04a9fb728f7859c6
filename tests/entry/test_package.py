"""The package docstring is the specification: its worked example is read as a stranger would read it."""

import re

import inspect_app.entry as package
from inspect_app.entry.format import parse
from inspect_app.entry.jws import verify

# RFC 7515 appendix A.3.1, the public members.
A3_KEY = {
    "kty": "EC",
    "crv": "P-256",
    "x": "f83OJ3D2xF1Bg8vub9tLe1gHMzV76e8Tus9uPHvRVEU",
    "y": "x_FEzRu9m36HLN_tue659LNpXW6pCyStikYjKIWI5a0",
}


def worked_example() -> str:
    assert package.__doc__ is not None
    block = package.__doc__.partition("characters::\n")[2].partition("Its digest")[0]
    return "".join(block.split())


def test_the_worked_example_parses_and_verifies() -> None:
    entry = parse(worked_example())
    verify(entry, A3_KEY)
    body = entry.payload["body"]
    assert isinstance(body, dict)
    assert (entry.by, body["panel"], body["from_low_end"]) == ("ada", 7, {"value": "12.5", "unit": "ft"})
    assert (body["chosen"], body["reached"]) == ("hand", "yes")


def test_the_worked_example_has_the_kid_and_the_digest_the_text_gives() -> None:
    assert package.__doc__ is not None
    entry = parse(worked_example())
    assert f"``{entry.kid}``" in package.__doc__
    assert re.findall(r"Its digest is ``([\w-]{43})``", package.__doc__) == [entry.digest]
