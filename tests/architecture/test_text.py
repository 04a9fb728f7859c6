"""The project speaks of the project alone, and is finished where it stands."""

import json
import re

import pytest

from tests.architecture.tree import files, source, text

# Each pattern is spelled so that it does not find itself here.
MACHINE = re.compile(r"(?<![\w.*~-])/(?:work|home|tmp|Users|root|mnt|scratch)/[\w.-]|\b[A-Z]:\\+Users\b")
HOST = re.compile(r"\b(?:registry|pypi|npmjs|pythonhosted|yarnpkg)[\w.-]*\.(?:org|com|net|io|dev)\b", re.I)
LATER = re.compile(
    r"\b(?:T[O]DO|F[I]XME|X{3}|W[I]P|H[A]CK)\b|(?i:\bfor n[o]w\b|\bs[o]meday\b|\bnot yet implem|\bt[e]mporary fix|"
    r"\b(?:do|add|fix|implement|improve|handle|support) (?:this |that |it )?l[a]ter\b)"
)
OUR_WORK = re.compile(
    r"\b(?:s[u]b-?agents?|ch[a]tbots?|l[a]nguage models?|AI-g[e]nerated|d[e]sign\.md|f[i]eld-rules|st[y]le\.md|"
    r"m[i]lestones?|b[a]cklog|st[o]ry points?|user st[o]r(?:y|ies)|t[a]sk force|s[e]ed documents?|the br[i]ef\b|"
    r"(?:issue|ticket|PR|pull request|closes|fixes) #?\d+\b|as (?:discussed|requested|instructed))", re.I,
)  # fmt: skip
CODE = (".py", ".js", ".mjs", ".css", ".html", ".sh", "Makefile", ".ci/machine", ".ci/run", ".toml")
VENDOR = "static/vendor/"


def found(pattern: re.Pattern[str], names: list[str]) -> dict[str, str]:
    """File -> the first place where it says what it should not."""
    said = {name: pattern.search(text(name) or "") for name in names}
    return {name: place[0] for name, place in said.items() if place}


def ours() -> list[str]:
    return [name for name in files() if not name.startswith(VENDOR)]


@pytest.mark.parametrize("pattern", [MACHINE, HOST, OUR_WORK], ids=["machine paths", "registries", "how we work"])
def test_the_files_speak_of_the_project_alone(pattern: re.Pattern[str]) -> None:
    assert len(ours()) > 500
    assert found(pattern, ours()) == {}


def test_no_code_waits_for_another_day() -> None:
    code = [name for name in ours() if name.endswith(CODE)]
    assert len(code) > 300
    assert found(LATER, code) == {}


def test_the_lock_file_pins_by_content_and_names_no_host() -> None:
    packages = {name: one for name, one in json.loads(source("package-lock.json"))["packages"].items() if name}
    assert packages and not any("resolved" in one for one in packages.values())
    assert all(one["integrity"].startswith("sha512-") for one in packages.values())


@pytest.mark.parametrize("pattern, planted", [
    (MACHINE, "see /wo" "rk/main/x"), (MACHINE, "open('/tm" "p/x')"), (MACHINE, "C:" "\\Users"),
    (HOST, "https://regi" "stry.npm" "js.org/x"), (HOST, "https://py" "pi.org/simple"),
    (LATER, "# TO" "DO: the rest"), (LATER, "// good enough for" " now"), (LATER, "# handle that lat" "er"),
    (OUR_WORK, "as the issue" " #12 says"), (OUR_WORK, "see des" "ign.md"), (OUR_WORK, "in this mile" "stone"),
])  # fmt: skip
def test_what_is_planted_is_seen(pattern: re.Pattern[str], planted: str) -> None:
    assert pattern.search(planted)


@pytest.mark.parametrize("pattern, fine", [
    (MACHINE, "static/work/a.js and /photos/x"), (HOST, "registry.register_multiple(x)"),
    (LATER, "all of it is kept; todo se conserva; a later answer"), (OUR_WORK, "#123456, the user's story, a reviewer"),
])  # fmt: skip
def test_what_is_fine_is_let_through(pattern: re.Pattern[str], fine: str) -> None:
    assert not pattern.search(fine)
