"""Checklists as data: from the text of one released file to a compiled definition, or to all its problems.

One immutable YAML 1.2 file per released version, ``checklists/ID-VERSION.yaml``. ``compile_text`` is pure:
text and the rulebook's description in, a ``Compiled`` or a list of ``Problem`` out; it reads no file and
knows no job. A compiled definition is JSON with sorted keys and no spaces, UTF-8 as it is; its digest, base64url
SHA-256 of those bytes, is what a job pins and what every answer names.

The format for people is explained in ``checklists/README.md``, its JSON Schema is ``checklists/schema.json``.
"""
