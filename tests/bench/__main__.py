"""``make bench``: what our work costs beside a peer in the same run. Exit code 1 when a limit is broken.
``python -m tests.bench report_photos packages`` runs those parts alone."""

import sys

from tests.bench import (
    delivery,
    entries,
    packages,
    pages,
    report_photos,
    roof_plan,
    roofs,
    rules,
    uploads,
    verdict,
    weight,
)

PARTS = (entries, rules, roofs, verdict, roof_plan, uploads, delivery, pages, report_photos, packages, weight)


def main(*names: str) -> int:
    broken = 0
    for part in [one for one in PARTS if not names or one.__name__.rpartition(".")[2] in names]:
        for row in part.rows():
            print(row, flush=True)
            broken += not row.kept
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
