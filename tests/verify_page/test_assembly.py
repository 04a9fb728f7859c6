"""The page is put together from its sources, the same bytes from the same files, and never quietly without a part."""

import base64
import hashlib
import json
import re
import shutil
from pathlib import Path

import pytest

from inspect_app.package.page import page
from inspect_app.settings import shipped

STATIC = shipped("static")


@pytest.fixture
def own(tmp_path: Path) -> Path:
    """A copy of the sources, to be broken."""
    for folder in ("verify", "entry", "words"):
        shutil.copytree(STATIC / folder, tmp_path / folder)
    return tmp_path


def test_the_same_files_give_the_same_page(own: Path) -> None:
    assert page(own) == page(STATIC)


def test_every_module_travels_and_every_import_leads_to_one() -> None:
    text = page(STATIC).decode()
    listed = json.loads(re.search(r'<script type="importmap">(.*?)</script>', text)[1])["imports"]
    sources = {name: base64.b64decode(url.partition(",")[2]).decode() for name, url in listed.items()}
    assert {f"verify/{one.name}" for one in (STATIC / "verify").glob("*.js")} <= sources.keys()
    named = {name for source in sources.values() for name in re.findall(r"(?m)^import .* from '([^']+)'$", source)}
    assert named and named <= sources.keys()
    assert all(source.count("\n") == (STATIC / name).read_text("utf-8").count("\n") for name, source in sources.items())


def test_the_policy_names_the_pages_own_scripts_and_style_and_no_address() -> None:
    text = page(STATIC).decode()
    policy = re.search(r'Content-Security-Policy" content="([^"]+)"', text)[1]
    for part in re.findall(r"<(?:script type=\"(?:importmap|module)\"|style)>(.*?)</", text, re.DOTALL):
        assert f"'sha256-{base64.b64encode(hashlib.sha256(part.encode()).digest()).decode()}'" in policy
    assert policy.startswith("default-src 'none'; ") and "http" not in policy and "unsafe" not in policy
    shown = re.sub(r"<script.*?</script>", "", text, flags=re.DOTALL)
    assert not re.search(r"(?:src|href)=|url\(|@import|https?://", shown)


@pytest.mark.parametrize("planted, wrong", [
    ("import {\n  a,\n} from './fact.js'\n", RuntimeError),
    ("const a = await import('./fact.js')\n", RuntimeError),
    ("import a from './nowhere.js'\n", FileNotFoundError),
    ("import a from '../../secret.js'\n", RuntimeError),
])  # fmt: skip
def test_an_import_that_cannot_travel_is_refused(planted: str, wrong: type[Exception], own: Path) -> None:
    file = own / "verify" / "fact.js"
    file.write_text(planted + file.read_text("utf-8"), "utf-8")
    with pytest.raises(wrong):
        page(own)


def test_no_text_ends_the_element_it_stands_in(own: Path) -> None:
    words = own / "words" / "verify_page.json"
    told = json.loads(words.read_text("utf-8"))
    told["verify_page.title"] = {"en": "</script><script>alert(1)</script>", "es": "{style}"}
    words.write_text(json.dumps(told), "utf-8")
    text = page(own).decode()
    assert text.count("<script") == page(STATIC).decode().count("<script")
    known = json.loads(re.search(r'id="known">(.*?)</script>', text)[1])
    assert known["words"]["verify_page.title"] == told["verify_page.title"]
