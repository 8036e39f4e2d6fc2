"""The sewing order as text: numbered steps with a box to tick, cautions under the step they belong to."""

import textwrap
from collections.abc import Iterator, Sequence

from studio.brief import Brief
from studio.draft.making import Making
from studio.units import Unit, spell
from studio.words import tr

from .cautions import ALWAYS, CAUTIONS

_WIDE = 84
_IN = " " * 8


def sewing_text(brief: Brief, steps: Sequence[Making], unit: Unit) -> Iterator[str]:
    """Line by line; a caution stands beside the first step that needs it."""
    yield f"{brief.title}: {tr('how to sew it')}"
    for number, (step, warned) in enumerate(zip(steps, cautions(steps), strict=True), 1):
        yield ""
        yield f"[ ] {number:>2}  {step.title}"
        yield from _wrapped((spell(s, unit) for s in step.says), _IN)
        yield from _wrapped((spell(CAUTIONS[c], unit) for c in warned), f"{_IN}! ")
    yield from ("", tr("With care"))
    yield from _wrapped((spell(s, unit) for s in ALWAYS), "  ")


def cautions(steps: Sequence[Making]) -> tuple[tuple[str, ...], ...]:
    """Which cautions to say at each step: each once, at the first step that has it, so that they are still read."""
    said: set[str] = set()
    found = []
    for step in steps:
        fresh = tuple(c for c in dict.fromkeys(step.cautions) if c not in said)
        said.update(fresh)
        found.append(fresh)
    return tuple(found)


def _wrapped(sentences: Iterator[str], first: str) -> Iterator[str]:
    for sentence in sentences:
        yield from textwrap.wrap(sentence, _WIDE, initial_indent=first, subsequent_indent=" " * len(first))
