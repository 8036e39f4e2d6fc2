"""Pages as values, and one small file for each kind of file that holds them."""

from typing import Literal, TypeAlias, get_args

Kind: TypeAlias = Literal["svg", "pdf", "dxf", "png", "booklet", "lay"]
KINDS: tuple[Kind, ...] = get_args(Kind)
"""What can be written; the booklet and the lay plan are PDFs."""
