"""What a JavaScript file imports: statements, re-exports and calls of ``import()``; types in comments are none."""

import re
from pathlib import PurePosixPath

STRING = r"'(?:\\.|[^'\\\n])*'|\"(?:\\.|[^\"\\\n])*\""
COMMENT = re.compile(rf"({STRING})|/\*.*?\*/|(?<![:\\])//[^\n]*", re.DOTALL)
STATEMENT = re.compile(r"""(?m)^[ \t]*(?:import|export)\b(?:[^'"`;(=]*?\bfrom)?\s*(['"])([^'"\n]+)\1""")
CALL = re.compile(r"""\bimport\(\s*(?:(['"])([^'"\n]+)\1|)""")


def imported(source: str, file: str) -> set[str]:
    """Paths of all that ``file`` (its own path in ``static/``) imports. Raises ``ValueError`` for a name that is
    computed, and for one that is not the path of a file beside it."""
    bare = COMMENT.sub(lambda found: found[1] or "", source)
    names = [found[2] for found in (*STATEMENT.finditer(bare), *CALL.finditer(bare))]
    for name in names:
        if not name or not name.startswith(("./", "../")):
            raise ValueError(f"{file}: an import of {name or 'a computed name'}, not of a file's own path")
    return {_joined(PurePosixPath(file).parent, name) for name in names}


def _joined(folder: PurePosixPath, name: str) -> str:
    parts: list[str] = []
    for part in (folder / name).parts:
        if part == "..":
            parts.pop()  # an IndexError: a path that leaves static/
        else:
            parts.append(part)
    return "/".join(parts)
