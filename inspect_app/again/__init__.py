"""Make a report again from what it encloses, and compare: its contents from the entries, its pages from the contents,
its printed copies from the original photos.

It runs the very code that makes reports, so it shows that a report was not altered after that code; what an entry is
worth, and whether a verdict is right, is asked in ``evidence``.
"""
