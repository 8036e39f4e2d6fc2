"""Undo and redo: a stack of briefs."""

from typing import Final

from msgspec import Struct
from msgspec.structs import force_setattr, replace

from .brief import Brief

STEPS: Final = 500


class History(Struct, frozen=True):
    """The brief as it is now, with those before it and those taken back; a value, so every step gives another."""

    now: Brief
    saved: Brief | None = None  # as the file holds it; None for a brief that starts clean
    before: tuple[Brief, ...] = ()
    after: tuple[Brief, ...] = ()  # nearest last
    joins: str = ""

    def __post_init__(self) -> None:
        """A new history has nothing to save."""
        if self.saved is None:
            force_setattr(self, "saved", self.now)

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
        return self.now == self.saved

    def edit(self, brief: Brief, *, joins: str = "") -> "History":
        """One step on. Edits in a row with the same `joins` are one step: a drag, or one move of a slider.

        What equals now is no step, and neither is a drag that ends where it began.
        """
        if brief == self.now:
            return self
        if not joins or joins != self.joins:
            return replace(self, now=brief, before=(*self.before, self.now)[-STEPS:], after=(), joins=joins)
        if brief == self.before[-1]:
            return replace(self, now=brief, before=self.before[:-1], joins="")
        return replace(self, now=brief)

    def finish(self) -> "History":
        """The drag is over: what follows is a step of its own."""
        return replace(self, joins="") if self.joins else self

    def undo(self) -> "History":
        """The last step taken back; the same history when there is none."""
        if not self.before:
            return self
        return replace(self, now=self.before[-1], before=self.before[:-1], after=(*self.after, self.now), joins="")

    def redo(self) -> "History":
        """The step last taken back, made again; the same history when there is none."""
        if not self.after:
            return self
        return replace(self, now=self.after[-1], before=(*self.before, self.now), after=self.after[:-1], joins="")

    def saved_at(self) -> "History":
        """The brief has been saved as it is now."""
        return replace(self, saved=self.now, joins="")
