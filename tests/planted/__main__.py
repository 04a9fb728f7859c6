"""``python -m tests.planted``: the table of the planted bugs, as the documentation prints it."""

from tests.planted.bug import table

print(table())
