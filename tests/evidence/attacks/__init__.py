"""What somebody could do to a package, one thing at a time, from no key at all to every key there is.

Each attacker writes the bag's lists and the package's own page anew, so that they fit: lists are no protection. Which
facts turn is not written here: it comes out of verifying what the attack leaves (``found.py``), and the table of the
documentation is printed from that (``python -m tests.evidence``).
"""
