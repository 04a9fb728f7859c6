"""Verify an evidence package: the bag around it, the record in it, its photos, definitions and reports.

It takes names, sizes, digests and bytes; where they came from, a folder or an archive, is somebody else's matter.
"""
