"""Freeze the digests of released definitions: ``python -m tests.vectors.make_definitions``.

Adds what is new and refuses to change what is there: a released version never changes.
"""

import json
import sys
from pathlib import Path

from inspect_app.checklist.load import load_all
from inspect_app.settings import shipped

FILE = Path(__file__).parent / "definitions.json"


def main() -> int:
    frozen = json.loads(FILE.read_text("utf-8")) if FILE.exists() else []
    known = {(one["id"], one["version"]): one for one in frozen}
    found = load_all(shipped("checklists"))
    for (name, version), digest in found.by_version.items():
        before = known.get((name, version))
        if before and before["digest"] != digest:
            print(f"{name}-{version}.yaml is released and was changed; make it version {version + 1}", file=sys.stderr)
            return 1
        data = found.by_digest[digest].data.decode()
        known[name, version] = {"id": name, "version": version, "digest": digest, "compiled": data}
    rows = [known[key] for key in sorted(known)]
    FILE.write_text(json.dumps(rows, indent=1, ensure_ascii=False) + "\n", "utf-8", newline="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
