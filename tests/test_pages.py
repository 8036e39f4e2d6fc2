"""The pages of docs that follow from the code are up to date, and the others point at what is there."""

import importlib.util
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
DOCS = ROOT / "docs"


def generated() -> dict[str, str]:
    """Page by file name, as the code would write it now."""
    spec = importlib.util.spec_from_file_location("pages", DOCS / "make" / "pages.py")
    assert spec and spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return {name: page() for name, page in module.PAGES.items()}


@pytest.mark.parametrize("name", ["rules.md", "numbers.md"])
def test_generated_pages_are_up_to_date(name: str):
    """Rules and numbers in the docs are those of the program (run docs/make/pages.py)."""
    assert generated()[name] == (DOCS / name).read_text(encoding="utf-8")


@pytest.mark.parametrize("page", [ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted(DOCS.glob("*.md"))], ids=str)
def test_links_lead_somewhere(page: Path):
    """Every link and picture is there."""
    for link in re.findall(r"\]\(([^)#:]+)\)", page.read_text(encoding="utf-8")):
        assert (page.parent / link).exists(), link
