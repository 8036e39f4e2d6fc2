"""Rules about tiers."""

from collections.abc import Iterator

from studio.styles import rack
from studio.words import phrase

from .finding import Finding, Worked


def tiers_as_typed(w: Worked) -> Iterator[Finding]:
    """Each tier is as deep as it was typed, and leaves room for those below it. The remedy lets it share, with those
    below, what the length leaves.
    """
    if "skirt.depths" not in rack.declarations(w.brief) or rack.value(w.brief, "skirt.depths") != "typed":
        return
    paths = [f"skirt.depth_{k}" for k in range(1, rack.value(w.brief, "skirt.tiers"))]
    for k, path in enumerate(paths, 1):
        typed, drawn = rack.value(w.brief, path), w.draft.fact(f"tier_{k}_depth")
        if typed is None or typed < drawn + 1e-6:
            continue
        says = phrase(
            "Tier {k:count} cannot be {t} deep: a length of {l} leaves it {d}.",
            k=k, t=typed, l=w.brief.finished_length, d=drawn,
        )  # fmt: skip
        remedy = dict.fromkeys(paths[k - 1 :])
        piece = f"tier-{k}" if k > 1 else "skirt"
        yield Finding("tiers-as-typed", "stop", says, path, piece, remedy, phrase("Share what is left"))
        return
