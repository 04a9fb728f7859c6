"""Ratios against a peer in the same run; ``make bench`` prints them, no test times anything."""
