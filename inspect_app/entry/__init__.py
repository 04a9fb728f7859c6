"""Signed entries: the bytes that everything in Seamwalk stands on, as a pure state machine.

This package takes bytes and values and returns values. It does not store, send, read a clock, make random
numbers or know about sessions. What was received is kept to the byte and never written again; a reader that
wants to check an entry checks those bytes.

An entry
========

A compact JWS (RFC 7515 section 7.1): ``header.payload.signature``, each part in canonical base64url without
padding, 64 KiB at most together. The signature is ES256 (RFC 7518 section 3.4): 64 raw bytes r || s over
``header.payload``, s in the lower half of the order. The header is an object with exactly ``alg``
(``ES256``), ``kid`` (the RFC 7638 thumbprint of the device key) and ``typ`` (``seamwalk-entry``), in any
order.

The payload is a JSON object in UTF-8. Refused anywhere in it: a key that stands twice in one object, a number
that is not an integer within ±(2^53 - 1), nesting over 32, a lone surrogate, NUL. Its members:

``v``
    1.
``id``
    UUIDv7, made on the phone.
``kind``, ``job``, ``subject``
    What it says (``kinds``); which job (UUIDv7); the thing it speaks of (``subject``).
``replaces``
    List of the digests of the versions it supersedes.
``at``
    Device wall time: ``2026-11-25T16:40:05.120-05:00`` (``moment``).
``clock``
    ``monotonic`` (integer milliseconds), ``server`` (last known server time, or null), ``age`` (integer
    milliseconds since then, or null), ``zone`` (IANA name, or empty).
``seq``, ``prev``
    Counter from 0 and digest of the entry before it (null exactly when ``seq`` is 0), per key and job.
``by``, ``build``
    Person id, who must own the key; the app build.
``body``
    By kind; its shape is in ``kinds``. Unknown members, here and in the body, are kept.

The digest of an entry is base64url(SHA-256(``header.payload``)), 43 characters. The signature is not part of
it: a second valid signature of the same content is the same entry.

A worked example
================

Signed with the key of RFC 7515 appendix A.3, whose thumbprint, and so ``kid``, is
``oKIywvGUpTVTyxMQ3bwIIeQUudfr_CkLMjCE19ECD-U``. The token, in lines of 96 characters::

    eyJhbGciOiJFUzI1NiIsImtpZCI6Im9LSXl3dkdVcFRWVHl4TVEzYndJSWVRVXVkZnJfQ2tMTWpDRTE5RUNELVUiLCJ0eXAi
    OiJzZWFtd2Fsay1lbnRyeSJ9.eyJ2IjoxLCJpZCI6IjAxYTIxNGE2LWNiODEtNzEwMS04MTAxLTAxMDEwMTAxMDEwMSIsImt
    pbmQiOiJzdGF0aW9uIiwiam9iIjoiMDFhMjE0YTYtY2I4Mi03MjAyLTgyMDItMDIwMjAyMDIwMjAyIiwic3ViamVjdCI6IjA
    xYTIxNGE2LWNiODMtNzMwMy04MzAzLTAzMDMwMzAzMDMwMyIsInJlcGxhY2VzIjpbXSwiYXQiOiIyMDI2LTExLTI1VDE2OjQ
    wOjA1LjEyMC0wNTowMCIsImNsb2NrIjp7Im1vbm90b25pYyI6ODEyMzQsInNlcnZlciI6bnVsbCwiYWdlIjpudWxsLCJ6b25
    lIjoiQW1lcmljYS9OZXdfWW9yayJ9LCJzZXEiOjAsInByZXYiOm51bGwsImJ5IjoiYWRhIiwiYnVpbGQiOiIxIiwiYm9keSI
    6eyJ3YWxrIjoiMDFhMjE0YTYtY2I4NC03NDA0LTg0MDQtMDQwNDA0MDQwNDA0IiwiYXJlYSI6IjAxYTIxNGE2LWNiODUtNzU
    wNS04NTA1LTA1MDUwNTA1MDUwNSIsInBhbmVsIjo3LCJmcm9tX2xvd19lbmQiOnsidmFsdWUiOiIxMi41IiwidW5pdCI6ImZ
    0In0sInpvbmUiOiJmaWVsZCIsImNob3NlbiI6ImhhbmQiLCJyZWFjaGVkIjoieWVzIn19.VexmMEhqRHk_FGGlP6mHrP0Dan
    JECVekeLex_Sf4zBwTQ2H8J6rE0wsrwsWnKfnqwhspR-4TTEePJCDQ_FVn2A

Its digest is ``J5MHcD0McKRCzVtXwIUVUmxrk9bjURPpuXFQJM-SMOI``.
It says that person ``ada`` went to panel 7 of an area, 12.5 ft from its low end, a place that was chosen by
hand, and could reach it.

What becomes of an entry
========================

``accept.accept`` answers each token on its own:

- ``Accepted``: well formed, signed by an enrolled key, by the person who owns that key and belongs to the
  job. A ``job`` entry of a job without members is accepted from an administrator, who becomes its first
  member.
- ``Duplicate``: this digest is held already. Nothing about it can change any more.
- ``Quarantined``: well formed and signed, but the key is revoked. Kept and visible, never dropped.
- ``Refused``: a code, the field and the value; the texts are in ``static/words/entry.json``.

Arrival out of order, a gap in ``seq``, two entries with one ``seq`` and clocks that are years off are never
refused: they are facts about the log, and the record reports them.

Beside entries, the same form carries the server's statements (``statement``, ``receipts``) and a device's
proofs that it holds its key (``proof``).
"""
