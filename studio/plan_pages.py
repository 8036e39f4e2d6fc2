"""The lay plan of a docket as it is printed, and the file that holds it."""

from pathlib import Path

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
from studio.words import phrase, tr
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
        tuple(spell(said, unit) for said in what_it_takes(docket)),
        tuple(besides(docket, unit)),
    )
    return tuple(lay_pages(plan, paper_size(docket.brief.paper)))


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
