"""``python -m tests.simulation SEED [COUNT]``: one seed told step by step, or so many from it on."""

import json
import sys

from tests.simulation.run import run

first = int(sys.argv[1])
count = int(sys.argv[2]) if len(sys.argv) > 2 else 1
outcome = run(first, count, say=print if count == 1 else None)
for failure in outcome.failures:
    print(failure)
print(json.dumps(outcome.totals, indent=1))
sys.exit(bool(outcome.failures))
