"""Rules about the lining."""

from collections.abc import Iterator

from studio.draft.lining import lining_block
from studio.draft.stride import hang_of, stride_girth
from studio.words import phrase

from .finding import Finding, Worked


def lining_can_hang(w: Worked) -> Iterator[Finding]:
    """A lining hangs closed under the skirt; under a wrap it would show. The remedy leaves it out."""
    if w.brief.lining.kind != "none" and w.brief.opening.kind == "wrap":
        says = phrase("A wrap opens where a lining would hang closed.")
        remedy = {"lining.kind": "none"}
        yield Finding("lining-can-hang", "stop", says, "lining.kind", "skirt", remedy, phrase("No lining"))


def lining_lets_step(w: Worked) -> Iterator[Finding]:
    """A lining too must open as far as a step does; where it does not, its sides are left open below the knee."""
    kind = w.brief.lining.kind
    if kind == "none" or w.brief.opening.kind == "wrap":
        return
    shut = w.brief.finished_length - w.brief.lining.shorter
    hang, height = hang_of(w.brief.body, shut), w.brief.body.height
    if hang is None or height is None:
        return
    need, sweep = stride_girth(height, hang), lining_block(w.brief).hem_sweep
    if sweep >= need - 1e-9:
        return
    says = phrase("A lining of {s} round the hem is short of a stride of {n}: leave its sides open below the knee.",
                  s=sweep, n=need)  # fmt: skip
    yield Finding("lining-lets-step", "note", says, "lining.kind", "lining-back")
