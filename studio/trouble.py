"""What the maker is told when something cannot be had."""


class Trouble(Exception):
    """Anything that goes wrong for the maker: its `str` is one clear sentence, fit to be shown as it is."""


def shown(text: str, room: int = 24) -> str:
    """Somebody's own text as it may stand in a sentence: shortened, on one line, with nothing unseen in it."""
    kept = text if len(text) <= room else text[: room - 1] + "…"
    return "".join(c if c.isprintable() else "\ufffd" for c in kept)
