"""The store: an ordered log of accepted entries and statements, and a vault of photos under their own hash.

What is in the log and the vault is never changed or removed. Every other table can be dropped and is made
again, identically, from these two (``rebuild``).
"""
