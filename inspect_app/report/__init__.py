"""The report: contents first, as data; then pages; then the seal.

``contents.report_contents`` decides what a report says (values in, values out). ``pages.write_pages`` lays
that out as a PDF, the same bytes for the same contents. ``seal`` signs it. ``make`` does all three for one
job and keeps the files. Nothing here judges: verdicts come from the entries as they were shown.
"""
