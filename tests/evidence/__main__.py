"""``python -m tests.evidence``: the table of the attacks on a package, as the documentation prints it."""

from tests.evidence.attacks.found import table

print(table())
