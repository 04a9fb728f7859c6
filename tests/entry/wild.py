"""Random values of the kind people type and hostile phones send, for Hypothesis."""

from hypothesis import strategies as st

# Everything but what entries refuse: surrogates and NUL. Control characters, marks and emoji included.
texts = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=40)
integers = st.integers(-(2**53 - 1), 2**53 - 1)
leaves = st.none() | st.booleans() | integers | texts
values = st.recursive(
    leaves,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(texts, inner, max_size=4),
    max_leaves=12,
)
objects = st.dictionaries(texts, values, max_size=6)
