"""Where the contents of a report of many photos stand, beside its pictures."""

TOLD = "contents.json"
