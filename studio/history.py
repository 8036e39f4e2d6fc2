"""Undo and redo: a stack of briefs."""

from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from .brief import Brief, Skirt

STEPS: Final = 500


class History(Struct, frozen=True):
    """The brief as it is now, with those before it and those taken back; a value, so every step gives another."""

    now: Brief
    saved: Brief | None = None  # None while the brief now is the one saved
    before: tuple[Brief, ...] = ()
    after: tuple[Brief, ...] = ()  # nearest last
    joins: str = ""

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to take back."""
        return bool(self.before)

    @property
    def can_redo(self) -> bool:
        """Whether a step was taken back and may be made again."""
        return bool(self.after)

    @property
    def clean(self) -> bool:
        """Whether the brief is as it was saved."""
        return self.now == self._held

    @property
    def _held(self) -> Brief:
        """The brief as it was saved."""
        return self.now if self.saved is None else self.saved

    def _at(self, now: Brief, before: tuple[Brief, ...], after: tuple[Brief, ...], joins: str = "") -> "History":
        """Another brief now; what was saved stays what it is."""
        return History(now, self._held, before, after, joins)

    def edit(self, brief: Brief, *, joins: str = "") -> "History":
        """One step on. Edits in a row with the same `joins` are one step: a drag, or one move of a slider.

        What equals now is no step, and neither is a drag that ends where it began.
        """
        if brief == self.now:
            return self
        if not joins or joins != self.joins:
            return self._at(brief, (*self.before, self.now)[-STEPS:], (), joins)
        if brief == self.before[-1]:
            return self._at(brief, self.before[:-1], self.after)
        return self._at(brief, self.before, self.after, joins)

    def finish(self) -> "History":
        """The drag is over: what follows is a step of its own."""
        return replace(self, joins="") if self.joins else self

    def undo(self) -> "History":
        """The last step taken back; the same history when there is none."""
        if not self.before:
            return self
        return self._at(self.before[-1], self.before[:-1], (*self.after, self.now))

    def redo(self) -> "History":
        """The step last taken back, made again; the same history when there is none."""
        if not self.after:
            return self
        return self._at(self.after[-1], (*self.before, self.now), self.after[:-1])

    def worn(self) -> tuple[Skirt, ...]:
        """The skirt of every style that was on the table, as it was there last: on the way here, then further on."""
        briefs = (*reversed(self.before), *reversed(self.after))
        found: dict[type[Skirt], Skirt] = {}
        for brief in briefs:
            found.setdefault(type(brief.skirt), brief.skirt)
        return tuple(found.values())

    def saved_at(self) -> "History":
        """The brief has been saved as it is now."""
        return replace(self, saved=None, joins="")
