"""What whoever runs the office does with a store as a whole: check it, back it up, set it back."""
