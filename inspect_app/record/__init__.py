"""Fold the entries of one job into its record, and judge a checklist's items against that record.

Plain Python that runs unchanged on CPython and on MicroPython (the phone): values in, values out; no clock,
no files, no database. The record is a function of the *set* of entries: their order, and how often each
arrived, never matter. It does not verify signatures; that is done where bytes come in (``inspect_app.entry``).
"""
