"""The HTTP interface: routes of a few lines, wire schemas, and every error turned into JSON in one place."""
