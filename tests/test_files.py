"""Files that appear whole or not at all."""

from pathlib import Path

import pytest

from studio.files import beside


def test_the_new_file_takes_the_place_of_the_old(tmp_path: Path):
    """A finished export replaces the one before it and keeps its permissions."""
    path = tmp_path / "p.pdf"
    path.write_text("old")
    path.chmod(0o640)
    with beside(path) as fresh:
        fresh.write_text("new")
        assert "old" == path.read_text()
        assert ".pdf" == fresh.suffix
    assert "new" == path.read_text()
    assert 0o640 == path.stat().st_mode & 0o777
    assert [path] == list(tmp_path.iterdir())


def test_what_fails_leaves_all_as_it_was(tmp_path: Path):
    """Nothing is lost and nothing is left behind."""
    path = tmp_path / "p.pdf"
    path.write_text("old")
    with pytest.raises(RuntimeError), beside(path) as fresh:
        fresh.write_text("half")
        raise RuntimeError
    assert ("old", [path]) == (path.read_text(), list(tmp_path.iterdir()))


def test_a_link_stays_a_link(tmp_path: Path):
    """An export to a link writes what the link points at."""
    path, link = tmp_path / "p.pdf", tmp_path / "link.pdf"
    path.write_text("old")
    link.symlink_to(path)
    with beside(link) as fresh:
        fresh.write_text("new")
    assert link.is_symlink()
    assert "new" == path.read_text()


def test_long_names_are_written(tmp_path: Path):
    """A name as long as the disk allows is no trouble."""
    path = tmp_path / ("n" * 250 + ".pdf")
    with beside(path) as fresh:
        fresh.write_text("new")
    assert path.exists()
