"""The shelf of cloths: what is put there is found there."""

from pathlib import Path

import pytest

from studio.brief import Cloth, Held
from studio.cloth import shelf
from studio.trouble import Trouble


@pytest.mark.parametrize(
    "raw",
    [b"", b"{", b"\xff\xfe\x00", b'{"name": "\xff\xfe"}', b'{"gap": ' + b"[" * 60_000, b'{"width": -1}', b"[]",
     b" " * (shelf.LARGEST + 1)],
)  # fmt: skip
def test_a_spoilt_file_does_not_keep_the_shelf_from_opening(tmp_path: Path, raw: bytes):
    """A file that is no whole cloth is passed over and stays; the others are listed, put and taken off."""
    spoilt = tmp_path / "a.cloth"
    spoilt.write_bytes(raw)
    shelf.put(tmp_path, Cloth(name="Sprig"))
    assert ["Sprig"] == [c.name for c in shelf.cloths(tmp_path)]
    shelf.take_off(tmp_path, "Sprig")
    assert [] == shelf.cloths(tmp_path)
    assert raw == spoilt.read_bytes()


def test_a_cloth_is_put_in_its_own_place(tmp_path: Path):
    """Put again it takes the place of the one of its name; two names that make one file name are two cloths."""
    for width in (1000.0, 1100.0):
        shelf.put(tmp_path, Cloth(name="Sprig & co", width=width, on_hand=900.0, held=(Held("skirt", 0, 0.0, 15.0),)))
    shelf.put(tmp_path, Cloth(name="Sprig + co"))
    assert [Cloth(name="Sprig & co", width=1100.0), Cloth(name="Sprig + co")] == shelf.cloths(tmp_path)


def test_a_full_shelf_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """Nothing that is put on the shelf is hidden there: where it is full that is said, a cloth of its own name is put
    in its place all the same, and one taken off makes room.
    """
    monkeypatch.setattr(shelf, "MOST", 3)
    for name in ("C", "B", "D"):
        shelf.put(tmp_path, Cloth(name=name))
    with pytest.raises(Trouble, match=r"The shelf is full: it holds 3 cloths\. Take one off first\."):
        shelf.put(tmp_path, Cloth(name="A"))
    shelf.put(tmp_path, Cloth(name="D", width=900.0))
    assert ["B", "C", "D"] == [c.name for c in shelf.cloths(tmp_path)]
    shelf.take_off(tmp_path, "B")
    shelf.put(tmp_path, Cloth(name="A"))
    assert ["A", "C", "D"] == [c.name for c in shelf.cloths(tmp_path)]
