"""Everything a docket can be printed as, written file by file, so that a caller can show how far it is and stop."""

import re
import unicodedata
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TypeAlias

from msgspec import Struct

from studio.files import file_name, refusal
from studio.paper.page import Page
from studio.paper.pattern import Said
from studio.paper.printed import printed
from studio.paper.sizes import LONGEST
from studio.paper.whole import numbered, one_sheet, own_sheet
from studio.trouble import Trouble
from studio.units import Unit, spell
from studio.words import phrase, tr
from studio.workroom import Docket

KINDS = ("svg", "pdf", "dxf", "png")
"""What can be written."""


class Step(Struct, frozen=True):
    """How far an export is: `done` of `total` files, what it is at, and the file it has just finished."""

    done: int
    total: int
    says: str
    wrote: Path | None = None


Work: TypeAlias = Callable[[Path], Iterator[int]]
"""Writes one file, yielding after each page."""


def export(docket: Docket, folder: Path, kinds: tuple[str, ...], unit: Unit) -> Iterator[Step]:
    """Write the docket's pieces into a folder, which is made where there is none.

    Each file appears whole or not at all; closing the iterator stops before the next page and leaves what is
    finished. Raises `Trouble` in one sentence for anything that cannot be written.
    """
    jobs = [job for kind in KINDS if kind in kinds for job in _jobs(docket, kind, unit)]
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for done, (name, work) in enumerate(jobs):
            path = folder / name
            for page in work(path):
                yield Step(done, len(jobs), spell(phrase("{f:word}, page {n:count}", f=name, n=page), unit))
            yield Step(done + 1, len(jobs), name, path)
    except OSError as fault:
        raise Trouble(refusal(fault, phrase("{name:word} cannot be written.", name=file_name(folder)))) from fault


def _jobs(docket: Docket, kind: str, unit: Unit) -> list[tuple[str, Work]]:
    """Every file of a kind: its name, and how it is written."""
    said, stem, title = Said(docket.brief, unit), _stem(docket.brief.title), docket.brief.title
    singles = [(p.id, own_sheet(number, p, said)) for number, p in numbered(docket.pieces)]
    every = one_sheet(docket.pieces, said)
    if kind == "pdf":
        paper = docket.brief.paper.size.lower().replace(" ", "-")
        files: list[tuple[str, Work]] = [
            (f"{stem}-sheets-{paper}.pdf", _pdf(lambda: printed(docket.pieces, said), title)),
        ]
        if _holds(every):
            files.append((f"{stem}-all.pdf", _pdf(lambda: iter((every,)), title)))
        files += [(f"{stem}-{name}.pdf", _pdf(_once(page), title)) for name, page in singles if _holds(page)]
        return files
    write = {"svg": _svg, "dxf": _dxf, "png": _png}[kind]
    return [(f"{stem}-{name}.{kind}", write(page, title)) for name, page in (*singles, ("all", every))]


def _holds(page: Page) -> bool:
    """Whether a PDF can hold a page of that size; what is longer is printed on sheets or a roll."""
    return max(page.size) <= LONGEST


def _once(page: Page) -> Callable[[], Iterator[Page]]:
    return lambda: iter((page,))


def _pdf(pages: Callable[[], Iterator[Page]], title: str) -> Work:
    def work(path: Path) -> Iterator[int]:
        from studio.paper.pdf import write_pdf

        return write_pdf(path, pages(), title)

    return work


def _svg(page: Page, title: str) -> Work:
    def work(path: Path) -> Iterator[int]:
        from studio.paper.svg import write_svg

        write_svg(path, page, title)
        yield 1

    return work


def _dxf(page: Page, title: str) -> Work:
    def work(path: Path) -> Iterator[int]:
        from studio.paper.dxf import write_dxf

        write_dxf(path, page.drawing, title)
        yield 1

    return work


def _png(page: Page, title: str) -> Work:
    def work(path: Path) -> Iterator[int]:
        from studio.paper.png import write_png

        write_png(path, page)
        yield 1

    return work


def _stem(title: str) -> str:
    """A file name from the skirt's own: plain letters and figures, as every system takes them."""
    plain = unicodedata.normalize("NFKD", title).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-")[:40] or tr("skirt")
