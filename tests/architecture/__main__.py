"""Print the tables of directions for DEVELOPERS.md."""

from tests.architecture.directions import JAVASCRIPT, PYTHON, printed

for language, table in (("Python", PYTHON), ("JavaScript", JAVASCRIPT)):
    print(*printed(language, table), "", sep="\n")
