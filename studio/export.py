"""Everything a docket can be printed as, written file by file, so that a caller can show how far it is and stop."""

from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TypeAlias

from msgspec import Struct

from studio.files import file_name, file_stem, refusal
from studio.paper import Kind
from studio.paper.booklet import booklet
from studio.paper.page import Page
from studio.paper.pattern import Said
from studio.paper.printed import many, printed, sheet_count
from studio.paper.sizes import LONGEST
from studio.paper.whole import numbered, one_sheet, own_sheet
from studio.plan_pages import check_plan, plan_pages
from studio.trouble import Trouble
from studio.units import Unit, spell
from studio.words import Phrase, phrase
from studio.workroom import Docket

DOTS = 6.0
"""Dots for each millimetre of a picture, about 150 to the inch."""


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
    if "lay" in kinds:
        check_plan(docket, unit)
    jobs = list(_jobs(docket, kinds, unit))
    at = folder
    try:
        folder.mkdir(parents=True, exist_ok=True)
        for done, (name, work) in enumerate(jobs):
            at = folder / name
            for page in work(at):
                yield Step(done, len(jobs), spell(phrase("{f:word}, page {n:count}", f=name, n=page), unit))
            yield Step(done + 1, len(jobs), name, at)
    except OSError as fault:
        says = phrase("{name:word} cannot be written; choose another folder.", name=file_name(at))
        raise Trouble(refusal(fault, says)) from fault


def sheets(docket: Docket, unit: Unit) -> tuple[int, Phrase | None]:
    """How many sheets are glued together; and what takes fewer, where they are many."""
    said = Said(docket.brief, unit)
    count = sheet_count(docket.pieces, said)
    return count, many(count, said)


def _jobs(docket: Docket, kinds: tuple[str, ...], unit: Unit) -> Iterator[tuple[str, Work]]:
    """Every file: its name, and how it is written."""
    said, stem, title = Said(docket.brief, unit), file_stem(docket.brief.title), docket.brief.title
    pages = {p.id: own_sheet(number, p, said) for number, p in numbered(docket.pieces)}
    pages["all"] = one_sheet(docket.pieces, said)
    if "pdf" in kinds:
        paper = file_stem(docket.brief.paper.size)
        yield f"{stem}-sheets-{paper}.pdf", _pdf(lambda: printed(docket.pieces, docket.notions, said), title)
    if "booklet" in kinds:
        yield f"{stem}-booklet.pdf", _pdf(lambda: iter(booklet(docket.draft, docket.notions, said)), title)
    if "lay" in kinds:
        yield f"{stem}-lay-plan.pdf", _pdf(lambda: iter(plan_pages(docket, unit)), title)
    for kind, writer in _WRITERS.items():
        for name, page in pages.items() if kind in kinds else ():
            if kind != "pdf" or _holds(page):
                yield f"{stem}-{name}.{kind}", writer(page, title)


def _holds(page: Page) -> bool:
    """Whether a PDF can hold a page of that size; what is longer is printed on sheets or a roll."""
    return max(page.size) <= LONGEST


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


def _png(page: Page, _: str) -> Work:
    def work(path: Path) -> Iterator[int]:
        from studio.paper.png import write_png

        write_png(path, page, DOTS)
        yield 1

    return work


def _pdf_page(page: Page, title: str) -> Work:
    return _pdf(lambda: iter((page,)), title)


_WRITERS: dict[Kind, Callable[[Page, str], Work]] = {"svg": _svg, "pdf": _pdf_page, "dxf": _dxf, "png": _png}
