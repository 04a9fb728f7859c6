"""Known ways to lose what was saved, planted one at a time in a copy of the app: each must be caught by its test."""
