"""Two skirts of no rack, and files of them: whole, changed, broken."""

import io
import json
from typing import Annotated, Any, Literal

import pytest
from msgspec.structs import replace
from PIL import Image

from studio.brief import Body, Brief, Cloth, Skirt
from studio.brief.declare import one_of, times, whole, yes_no
from studio.brief.skirt_file import Damaged, dump, load


class Tulip(Skirt, frozen=True, tag="tulip"):
    """A skirt of the tests."""

    fullness: Annotated[float, times("Fullness", 1, 5, "Cloth to seam.")] = 2.0
    cut: Annotated[Literal["along", "across"], one_of("Cut", "Which way.")] = "along"
    panels: Annotated[int, whole("Panels", 0, 24, "How many.")] = 0
    lined: Annotated[bool, yes_no("Lined", "With a lining.")] = False


class Pencil(Skirt, frozen=True, tag="pencil"):
    """Another, with other bounds for a number of the same name."""

    panels: Annotated[int, whole("Gores", 2, 6, "How many.")] = 3


STYLES = (Tulip, Pencil)
BRIEF = Brief(
    skirt=Tulip(length=611.1 / 3, fullness=2.2, panels=3),
    title="Zoë’s “Sunday” skirt ½ 🌷",
    body=Body(waist=685.0, hip=None),
    cloth=Cloth(on_hand=1234.5, shrinkage=0.05),
)
RAW = dump(BRIEF)
NEXT = replace(BRIEF, title="Another", body=Body(waist=700.0))


def changed(path: str, value: Any) -> bytes:
    """The file with one thing in it changed."""
    content = json.loads(RAW)
    *rooms, field = path.split(".")
    here = content
    for room in rooms:
        here = here[room]
    here[field] = value
    return json.dumps(content).encode()


def told(raw: bytes) -> str:
    """What the maker is told of a file that cannot be read."""
    with pytest.raises(Damaged) as fault:
        load(raw, STYLES)
    assert str(fault.value).isprintable()
    assert len(str(fault.value)) < 200
    return str(fault.value)


def picture() -> bytes:
    """A PNG as a camera or a scanner might leave one."""
    out = io.BytesIO()
    Image.effect_noise((40, 30), 60).save(out, "PNG")
    return out.getvalue()
