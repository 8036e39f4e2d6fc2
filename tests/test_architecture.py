"""The way through the house is one way: imports point down, and each library has one home."""

import ast
import re
import sys
from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

HOUSE = Path(__file__).parents[1] / "studio"
LADDER = (
    "words", "trouble", "parser", "units", "files", "geometry", "brief", "draft", "styles", "cloth", "check", "drawing",
    "sewing", "paper", "workroom", "listing", "cutting", "slip", "shopping", "plan_pages", "export", "history", "shipped", "window", "commands", "__main__",
)  # fmt: skip
"""From the ground up: a room may use those before it."""
HOMES = {
    "PySide6": ("window/", "paper/pdf.py", "paper/png.py"),
    "svgwrite": ("paper/svg.py",),
    "ezdxf": ("paper/dxf.py",),
    "pint": ("units.py",),
    "pikepdf": ("paper/pdf_boxes.py",),
    "fontTools": ("drawing/lettering.py",),
    "PIL": ("cloth/photo/picture.py",),
    "numpy": ("cloth/photo/", "cloth/plan/"),
    "spyrrow": ("cloth/plan/engine.py",),
    "highspy": ("cloth/plan/solver.py",),
}
"""The only places that may import each library."""
LONGEST = 300


def modules() -> list[Path]:
    """Every module of the house."""
    return sorted(HOUSE.rglob("*.py"))


def imports(path: Path) -> Iterator[str]:
    """What a module imports, by full name."""
    package = ("studio", *path.relative_to(HOUSE).parent.parts)
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (a.name for a in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield from (f"{_source(node, package)}.{a.name}" for a in node.names)


def _source(node: ast.ImportFrom, package: tuple[str, ...]) -> str:
    """What a module in that package imports from, by full name."""
    base = package[: len(package) - node.level + 1] if node.level else ()
    return ".".join((*base, *filter(None, [node.module])))


def room(name: str) -> str:
    """The room of a full name: studio.draft.piece.Piece is in draft."""
    return name.split(".")[1] if name.startswith("studio.") else ""


def named(path: Path) -> str:
    """The full name of a module."""
    parts = ("studio", *path.relative_to(HOUSE).with_suffix("").parts)
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def at_once(path: Path) -> Iterator[str]:
    """What is imported, by full name, when a module is: not what functions fetch later, nor what only types name."""
    package = ("studio", *path.relative_to(HOUSE).parent.parts)
    waiting = list(ast.parse(path.read_text(encoding="utf-8")).body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.Import):
            yield from (a.name for a in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield from (f"{_source(node, package)}.{a.name}" for a in node.names)
        elif isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test):
            waiting += node.orelse
        elif not isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            waiting += [child for child in ast.iter_child_nodes(node) if isinstance(child, ast.stmt)]


@pytest.mark.parametrize("path", modules(), ids=lambda p: str(p.relative_to(HOUSE)))
def test_imports_point_down(path: Path):
    """No room uses one above it."""
    here = path.relative_to(HOUSE).with_suffix("").parts[0]
    if here == "__init__":
        return
    for name in imports(path):
        other = room(name)
        assert not other or LADDER.index(other) <= LADDER.index(here), f"{here} uses {name}"


def test_any_module_may_be_the_first():
    """No module needs itself before it is there: whichever is imported first, it can be."""
    names = {named(p) for p in modules()}
    needs: dict[str, set[str]] = {}
    for path in modules():
        here = named(path)
        above = {here.rsplit(".", k)[0] for k in range(1, here.count(".") + 1)}  # begun before it in any case
        found = set()
        for name in at_once(path):
            parts = name.split(".")
            heads = [".".join(parts[:k]) for k in range(1, len(parts) + 1)]
            known = [head for head in heads if head in names]  # the packages around it are imported first
            found |= {head for head in known if head not in above or (head == known[-1] != name)}
        needs[here] = found - {here}
    graph = TopologicalSorter(needs)
    try:
        graph.prepare()
    except CycleError as cycle:
        pytest.fail(" -> ".join(reversed(cycle.args[1])))


@pytest.mark.parametrize("library", HOMES)
def test_each_library_has_one_home(library: str):
    """A library can be replaced in one place."""
    users = {
        str(p.relative_to(HOUSE).as_posix()) for p in modules() for name in imports(p) if name.split(".")[0] == library
    }
    assert {u for u in users if not u.startswith(HOMES[library])} == set()


def test_modules_hold_one_idea():
    """No module grows past what can be read in one sitting."""
    assert {} == {p.name: n for p in modules() if (n := len(p.read_text(encoding="utf-8").splitlines())) > LONGEST}


def test_drafting_needs_no_qt():
    """Draft, check, lay, SVG and DXF work where there is no Qt."""
    import subprocess

    code = (
        "import sys; sys.modules['PySide6'] = None; "
        "import studio.workroom, studio.listing, studio.export, studio.paper.svg, studio.paper.dxf, studio.commands"
    )
    assert 0 == subprocess.run([sys.executable, "-c", code], check=False).returncode


TRADE = ("gathered", "pleated", "straight", "circle")
"""Styles whose names are words of the cutting table besides: a waist is gathered or pleated, a hem or a lining straight,
a line a circle.
"""


def said(path: Path) -> Iterator[str]:
    """Every name that a module uses, and all its text but for docstrings."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    told = {id(n.value) for n in ast.walk(tree) if isinstance(n, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in told:
            yield node.value
        for field in ("id", "attr", "name", "arg", "module"):
            if isinstance(word := getattr(node, field, None), str):
                yield word


def test_only_the_rack_knows_a_style_by_name():
    """A new skirt is one file on the rack: no other room imports a style or says the name of one, and no style
    imports another.
    """
    from studio.styles.rack import RACK

    names = [name for name in RACK if name not in TRADE]
    homes = {f"studio.styles.{style.record.__module__.rpartition('.')[2]}" for style in RACK.values()}
    assert len(names) >= 3
    for path in modules():
        assert not [n for n in imports(path) if any(n == h or n.startswith(f"{h}.") for h in homes)], path
        if path.parent.name == "styles":
            continue
        assert not [text for text in said(path) if any(name in text.casefold() for name in names)], path


def test_rules_ask_the_style_for_its_numbers():
    """A style may call its numbers as it likes: above the rack no room says a path of a number that only some have."""
    from studio.brief import Skirt

    shared = {f"skirt.{name}" for name in (*Skirt.__struct_fields__, "style")}
    for path in modules():
        if path.relative_to(HOUSE).parts[0] not in ("styles", "draft"):
            assert not [t for t in said(path) if re.fullmatch(r"skirt\.\w+", t) and t not in shared], path
            assert not re.search(r"getattr\([\w.]*skirt\b", path.read_text(encoding="utf-8")), path


def test_a_remedy_is_tried_in_one_way():
    """What a remedy would make is drafted and laid in one place, so that every rule tries it on the same skirt."""
    made_up = {"studio.cloth.lay.lay_out", "studio.workroom"}
    users = {p.name for p in modules() if p.parent.name == "check" and made_up & set(imports(p))}
    drafts = {p.name for p in modules() if p.parent.name == "check" and "rack.draft(" in p.read_text(encoding="utf-8")}
    assert {"finding.py", "makes.py"} == users == drafts  # and what cloth on hand makes, which is no remedy
