"""A job's folder comes all at once or not at all, is its owner's alone, and knows its pictures."""

import os

import pytest

from pentools.record.layout import has_picture, lay_out, like_it, pictures_in, shipped_folder


def test_an_empty_job_and_a_sample(tmp_path):
    lay_out(tmp_path / "pen-1")
    assert sorted(p.name for p in (tmp_path / "pen-1").iterdir()) == ["pen-1.ipynb", "photos", "scans", "writeup"]
    lay_out(tmp_path / "pen-2", sample=shipped_folder("sample_jobs") / "green-piston")
    assert {"pen-2.ipynb", "record.jsonl", "photos"} <= {p.name for p in (tmp_path / "pen-2").iterdir()}
    assert not (tmp_path / "pen-2" / "green-piston.ipynb").exists()
    assert pictures_in(tmp_path / "pen-2")
    if os.name == "posix":
        modes = [
            p.stat().st_mode & 0o777
            for p in (tmp_path / "pen-1", tmp_path / "pen-2", tmp_path / "pen-2" / "record.jsonl")
        ]
        assert modes == [0o700, 0o700, 0o600]


@pytest.mark.parametrize(
    "stops", ["shutil.copyfile", "pentools.record.layout.os.fsync", "pentools.record.layout.Path.rename"]
)
@pytest.mark.parametrize("failure", [OSError(28, "No space left on device"), KeyboardInterrupt()])
@pytest.mark.parametrize("there", [True, False])
def test_where_it_fails_nothing_is_left_behind(tmp_path, monkeypatch, stops, failure, there):
    bench = tmp_path / "bench"
    if there:
        bench.mkdir()

    def fail(*_, **__):
        raise failure

    monkeypatch.setattr(stops, fail)
    with pytest.raises(type(failure)):
        lay_out(bench / "pen-1")
    assert list(bench.iterdir()) == [] if there else not bench.exists()


def test_a_picture_is_known_by_its_name_and_the_nearest_is_named(tmp_path):
    photos = tmp_path / "photos"
    photos.mkdir()
    (photos / "Cap-Before.jpg").write_bytes(b"")
    (photos / "folder.jpg").mkdir()
    assert pictures_in(tmp_path) == ("Cap-Before.jpg",)
    assert has_picture(tmp_path, "Cap-Before.jpg")
    assert not any(
        has_picture(tmp_path, name) for name in ("cap-after.jpg", "folder.jpg", "x" * 400 + ".jpg", "a\0.jpg")
    )
    assert like_it(tmp_path, "cap-before.JPG") == "Cap-Before.jpg"
    assert like_it(tmp_path, "nib.png") == ""
    assert pictures_in(tmp_path / "not there") == ()
