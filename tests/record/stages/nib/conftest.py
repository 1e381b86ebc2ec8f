"""A job on a bench of its own that owns two films, and what is typed of its nib."""

import pytest

from pentools.record.bench import open_bench_folder
from pentools.record.job import create_job


@pytest.fixture
def job(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    path = bench.folder / "bench.toml"
    path.write_text(path.read_text().replace("abrasives = []", 'abrasives = ["film 3 um", "film 1 um"]'))
    job = create_job(open_bench_folder(bench.folder), "test-pen")
    job.add("intake", "arrival", {"pen": "a pen", "system": "piston", "material": "celluloid", "nib_mm": "19.2 mm"})
    return job


@pytest.fixture
def look(job):
    """Enters a look through the loupe."""

    def looked(when="found", *, tines="level", tipping="sound", **more):
        job.add("nib", "loupe", {"when": when, "tipping": tipping, "tines": tines, **more})

    return looked
