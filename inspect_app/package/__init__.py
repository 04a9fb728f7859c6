"""The evidence package: everything of a job that a stranger needs to check it without us, as a BagIt bag (RFC 8493).

One snapshot is gathered into a ``Bag``, an ordered list of members; a folder and a stored zip are two ways to write it.
"""
