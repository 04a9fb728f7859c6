"""``verify.html``: the page that checks a package in any browser, without a network, put together from small files.

The modules of ``static/verify/`` and what they import travel as ``data:`` addresses of an import map (HTML, "Import
maps"), each under its own path in ``static/``: the browser joins them, and the only thing changed in a source is the
path that an import names. Whatever does not lead to a file raises here. The policy names the page's own scripts and
style by their SHA-256 (CSP 3) and allows no address of any network. The same files give the same bytes.
"""

import base64
import hashlib
import json
import re
from collections.abc import Iterable
from pathlib import Path, PurePosixPath

from inspect_app.entry.kinds import BODIES
from inspect_app.rules.sampling_table import AQLS, LETTERS, LEVELS, MASTERS

START = "verify/main.js"
IMPORT = re.compile(r"""(?m)^((?:import|export)\b[^'"`;(=\n]*?)(['"])(\.{1,2}/[^'"\n]+)\2""")
# A name that still leads somewhere else after all were taken: of a statement over several lines, or computed.
LEFT = re.compile(r"""(?m)^(?!\s*//).*(?:\bfrom\s*|\bimport\s*\(?\s*)['"]\.{1,2}/""")
COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)  # types are imported in comments
SPOKEN = re.compile(r"verify_page\..+|role\.[a-z]+")


def page(static: Path) -> bytes:
    """The page, from the sources under ``static``. ``RuntimeError`` for an import that leads to no file of them,
    ``OSError`` for a source that is gone."""
    modules = json.dumps({"imports": {name: _address(source) for name, source in _modules(static).items()}})
    style = (static / "verify" / "page.css").read_text("utf-8")
    start = f'import "{START}"'
    filled = {
        "policy": _policy([modules, start], style), "style": style, "known": _embedded(known(static / "words")),
        "modules": modules, "start": start,
    }  # fmt: skip
    text = (static / "verify" / "page.html").read_text("utf-8")
    return re.sub(r"\{(\w+)\}", lambda found: filled[found[1]], text).encode()


def known(words: Path) -> dict[str, object]:
    """What the modules need beside themselves: ``kinds`` of entries, sampling ``tables``, their ``words``."""
    texts: dict[str, object] = {}
    for file in sorted(words.glob("*.json")):
        texts |= {key: text for key, text in json.loads(file.read_text("utf-8")).items() if SPOKEN.fullmatch(key)}
    tables = {"levels": LEVELS, "letters": LETTERS, "aqls": AQLS, "masters": MASTERS}
    return {"kinds": sorted(BODIES), "tables": tables, "words": texts}


def _modules(static: Path) -> dict[str, str]:
    """``{path in static/: source}`` of all that the page imports, each import by such a path."""
    found: dict[str, str] = {}
    waiting = [START]
    while waiting:
        name = waiting.pop()
        if name in found:
            continue
        source = (static / name).read_text("utf-8")
        named = {one[3]: _joined(PurePosixPath(name).parent, one[3], name) for one in IMPORT.finditer(source)}
        found[name] = _leading(source, named)
        if LEFT.search(COMMENT.sub("", found[name])):
            raise RuntimeError(f"{name}: an import that is not one line at its beginning")
        waiting += named.values()
    return dict(sorted(found.items()))


def _leading(source: str, named: dict[str, str]) -> str:
    """The source with other names in its imports: ``{written: path in static/}``."""
    return IMPORT.sub(lambda one: f"{one[1]}'{named[one[3]]}'", source)


def _joined(folder: PurePosixPath, path: str, name: str) -> str:
    parts: list[str] = []
    for part in (folder / path).parts:
        if part == ".." and not parts:
            raise RuntimeError(f"{name}: {path} leads out of the sources")
        parts = parts[:-1] if part == ".." else [*parts, part]
    return "/".join(parts)


def _embedded(told: object) -> str:
    """JSON as it may stand in an element of HTML: no ``<`` that could begin its end."""
    return json.dumps(told, ensure_ascii=False, sort_keys=True).replace("<", "\\u003c")


def _policy(scripts: Iterable[str], style: str) -> str:
    allowed = " ".join(_hash(one) for one in scripts)
    return (f"default-src 'none'; script-src {allowed} data:; style-src {_hash(style)}; img-src blob:; "
            "base-uri 'none'; form-action 'none'")  # fmt: skip


def _hash(text: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


def _address(source: str) -> str:
    return f"data:text/javascript;base64,{base64.b64encode(source.encode()).decode()}"
