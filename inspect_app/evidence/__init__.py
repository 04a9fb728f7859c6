"""Check what others were given: a report, by itself, on any machine.

It never imports the store, the intake or the web: a verifier that asks our own database proves nothing. Every
answer is a set of separate facts; ``not_determinable`` is an answer, and never the same as ``holds``.
"""
