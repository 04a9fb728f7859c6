"""What attacks on a package are made of. Whoever attacks writes the bag's lists anew, where it is not those that are
attacked."""

from collections.abc import Callable

from tests.verify_page.bag import Files, Small, chain, listed

Attack = Callable[[Small], Files]


def with_tokens(small: Small, **lists: list[str]) -> Files:
    for name, tokens in lists.items():
        setattr(small, name, tokens)
    return small.files()


def receipts_anew(small: Small) -> Files:
    """Receipts written anew over what is left, as only the server could."""
    return with_tokens(small, chain=chain(small.server, small.site.job, small.entries, small.photos))


def changed_files(change: Callable[[Files, Small], Files | None], anew: bool = True) -> Attack:
    def attack(small: Small) -> Files:
        files = small.files()
        files = change(files, small) or files
        return listed(files) if anew else files

    return attack


def without(name: str) -> Callable[[Files, Small], Files]:
    return lambda files, small: {one: data for one, data in files.items() if one != name.format(*small.names)}


def with_file(name: str, data: bytes) -> Callable[[Files, Small], Files]:
    return lambda files, small: files | {name: data}
