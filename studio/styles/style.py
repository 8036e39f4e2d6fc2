"""What a file on the rack offers."""

from collections.abc import Callable
from typing import Any, Generic, TypeVar

from msgspec import Struct

from studio.brief import Brief, Skirt
from studio.draft import Draft

S = TypeVar("S", bound=Skirt)


class Style(Struct, Generic[S], frozen=True):
    """A style: the record of its own numbers, and how it is drafted from a brief and that record."""

    record: type[S]
    draft: Callable[[Brief, S], Draft]

    @property
    def name(self) -> str:
        """The word for it in files and on the command line."""
        tag: Any = self.record.__struct_config__.tag
        return str(tag)
