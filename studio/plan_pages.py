"""The lay plan of a docket as it is printed, and the file that holds it."""

from collections.abc import Iterator
from pathlib import Path

from studio.brief import Cloth
from studio.cloth.left_over import left_over
from studio.cutting import cutting_steps
from studio.files import file_name, refusal
from studio.paper.lay import LayPlan, lay_pages
from studio.paper.page import Page
from studio.paper.pattern import Said
from studio.paper.sizes import paper_size
from studio.shopping import besides
from studio.slip import what_it_takes
from studio.trouble import Trouble
from studio.units import Unit, spell
from studio.words import Phrase, phrase, tr
from studio.workroom import Docket


def plan_pages(docket: Docket, unit: Unit) -> tuple[Page, ...]:
    """The pages of the plan as it lies there; raises `Trouble` where a piece does not fit the cloth."""
    check_plan(docket, unit)
    plan = LayPlan(
        Said(docket.brief, unit),
        docket.pieces,
        docket.lay,
        cutting_steps(docket),
        left_over(docket.brief, docket.lay, unit),
        tuple(spell(said, unit) for said in (*what_it_takes(docket), *_of_the_print(docket.brief.cloth))),
        tuple(besides(docket, unit)),
    )
    return tuple(lay_pages(plan, paper_size(docket.brief.paper)))


def _of_the_print(cloth: Cloth) -> Iterator[Phrase]:
    """What one has to know of the print to lay the cloth as it was planned."""
    if cloth.one_way:
        yield phrase("It is one way: every piece lies the same way up.")
    if cloth.repeat is not None and (cloth.bands or cloth.match):
        text = "Its print repeats every {r}; a motif starts at the cut end."
        if cloth.offset:
            text = "Its print repeats every {r}; a motif starts {o} from the cut end."
        yield phrase(text, r=cloth.repeat, o=cloth.offset)


def check_plan(docket: Docket, unit: Unit) -> None:
    """Raises `Trouble` in one sentence where there is no plan to print."""
    if docket.lay.misfits:
        says = phrase(
            "{p:word} does not fit the cloth, so there is no plan to print.", p=tr(docket.lay.misfits[0].name)
        )
        raise Trouble(spell(says, unit))


def put_plan(path: Path, docket: Docket, unit: Unit) -> None:
    """Write the plan as a PDF; raises `Trouble`, in one sentence, for whatever stands in the way."""
    from studio.paper.pdf import write_pdf

    try:
        for _ in write_pdf(path, plan_pages(docket, unit), docket.brief.title):
            pass
    except OSError as fault:
        says = phrase("{name:word} cannot be written; choose another folder.", name=file_name(path))
        raise Trouble(refusal(fault, says)) from fault
