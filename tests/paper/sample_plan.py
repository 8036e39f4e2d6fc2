"""A made-up plan for looking and measuring: a waistband and a template, as rectangles with lines and words."""

from studio.drawing import Group, Mark, Words, flat_marks, moved
from studio.drawing.dimension import dimension
from studio.drawing.furniture import arrow, disc, frame, paragraph, stroke
from studio.geometry import Box, Point, rectangle
from studio.paper.page import Page
from studio.paper.plan import PatternPiece
from studio.paper.title_block import title_block

TITLE = "Nell’s market skirt"
BAND = (770.0, 130.0)
TEMPLATE = (675.0, 170.0)


def words(text: str, x: float, y: float, turn: float = 0, height: float = 3.2) -> Words:
    """Words on a line."""
    return Words(text, Point(x, y), height, turn=turn, align="centre", patch=True)


def notch(x: float) -> tuple[Mark, ...]:
    """One stroke into the allowance, with a foot."""
    return (stroke("notch", (x, 0), (x, 6)), stroke("notch", (x - 1.5, 6), (x + 1.5, 6)))


def set_down(group: Group, x: float, y: float) -> Group:
    """A block moved to its wanted place."""
    return Group(group.name, moved(group.marks, x, y))


def waistband() -> PatternPiece:
    """Cut 770 by 130, seams at 15, a fold, quarters, a button and its hole."""
    wide, high = BAND
    marks: list[Mark] = [
        frame("cut", Box(0, 0, wide, high)),
        frame("seam", Box(15, 15, wide - 15, high - 15)),
        stroke("fold", (0, 65), (wide, 65)),
    ]
    for x in (190, 365, 540, 715):
        marks += [stroke("centre", (x, 15), (x, 115)), *notch(x)]
    for x, text in ((190, "side"), (365, "centre front"), (540, "side"), (715, "centre back")):
        marks.append(words(text, x - 1.4, 100, -90, 3.0))
    for x in (110, 270, 455, 640):
        marks += [words("seam, to the skirt", x, 16.1), words("fold, top edge", x, 66.1)]
        marks.append(words("seam, turned in", x, 116.1))
    marks += arrow(Point(50, 82), Point(170, 82), "grain", both=True)
    marks.append(words("grain, along the selvedge", 110, 83.1))
    marks += [disc(Point(45, 40), 9, "button"), stroke("note", (33, 40), (57, 40)), stroke("note", (45, 28), (45, 52))]
    marks += [
        stroke("button", (724, 40), (745, 40), width=0.7),
        *dimension(Point(724, 40), Point(745, 40), "2.1", off=9),
    ]
    marks += dimension(Point(745, 40), Point(755, 40), "1.0", off=9)
    marks += dimension(Point(15, 115), Point(715, 115), "closed band 70.0", off=9.5)
    marks += dimension(Point(225, high), Point(225, 0), "cut 13.0")
    block = title_block(
        "1", "Waistband", "cut 1",
        (
            ("cloth", "main, bud border"), ("for", "Nell, waist 68.5"), ("allowance", "1.5, included"),
            ("grain", "along"),
        ),
    )  # fmt: skip
    return PatternPiece(
        "1", "Waistband", rectangle(0, 0, wide, high), tuple(marks), (set_down(block, 67, 26),),
        upright=(0, 15, 190, 365, 540, 715, 755, wide), lying=(0, 15, 65, 115, high),
        whole=(Box(36, 31, 54, 49), Box(724, 37, 745, 43)), signs=("notch", "button", "buttonhole"),
    )  # fmt: skip


def template() -> PatternPiece:
    """Cut 675 by 170: the skirt's height along x, moved along the cloth."""
    wide, high = TEMPLATE
    marks: list[Mark] = [
        frame("cut", Box(0, 0, wide, high)),
        stroke("seam", (15, 0), (15, high)), stroke("seam", (0, 15), (wide, 15)),
        stroke("gather", (10, 35), (10, high)), stroke("gather", (20, 35), (20, high)),
        stroke("button", (6, 35), (24, 35), width=0.7),
        stroke("fold", (635, 0), (635, high)), stroke("fold", (665, 0), (665, high)),
        stroke("join", (0, 40), (wide, 40), width=0.5, colour="black"),
    ]  # fmt: skip
    for x in (90, 350, 560):
        marks.append(words("back seam, first move", x, 16.1))
        marks.append(words("move 10: cut the cloth here", x + 60, 41.2, 0, 3.6))
    marks += [words("hem fold", 633.4, 128, -90), words("first turn", 663.4, 128, -90)]
    marks += dimension(Point(0, 150), Point(wide, 150), "cut 67.5")
    marks += arrow(Point(490, 58), Point(490, 140), "grain", both=True)
    block = title_block(
        "2", "Skirt, template", "cut 1",
        (
            ("cloth", "main, meadow border"), ("for", "Nell, length 62"), ("allowance", "1.5, hem 4: included"),
            ("grain", "along"), ("size, cut", "157 × 67.5"),
        ),
    )  # fmt: skip
    order = Group("order", (
        Words("Lay it 10 times", Point(76, 82), 10, face="semibold"),
        *paragraph("Chalk the waist edge with a long rule. Lay this side on it, chalk both short ends, slide on. "
                   "Move 10 is only 4 wide: turn the template over for its rows.", 76, 87, 126, 4.4).marks,
    ))  # fmt: skip
    return PatternPiece(
        "2", "Skirt, template", rectangle(0, 0, wide, high), tuple(marks),
        (set_down(block, 278, 74), order),
        upright=(0, 10, 15, 20, 635, 665, wide), lying=(0, 15, 35, 40, 150, high), signs=("row stop", "zip stop"),
    )  # fmt: skip


def texts(page: Page) -> list[str]:
    """All words on a page."""
    return [m.text for m in flat_marks(page.drawing) if isinstance(m, Words)]
