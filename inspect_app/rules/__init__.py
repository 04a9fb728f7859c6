"""The rulebook: what a reading means, as values in and values out.

The server runs these files on CPython and the phone runs the very same files on MicroPython, so they keep to
what both have: functions over numbers, text, lists, dicts and ``collections.namedtuple``; imports only of
``math``, ``hashlib``, ``json``, ``collections`` and each other. No formatting, rounding or text case (the
interpreters differ there), no clock, no files, no database. ``tests/rules`` holds the lint.

A released rule never changes: ``window.py`` is ``window@1`` for ever, and a changed mind becomes ``window@2`` in
a file of its own. The shared files (units, comparison, reading of inputs) are part of every release.

Everything starts at :mod:`inspect_app.rules.rulebook`.
"""
