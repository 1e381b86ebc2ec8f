"""What several tests of the seal stage type."""

from pentools.record.bench import open_bench_folder
from pentools.record.job import open_job

HEAD = {"bore": "8.30 mm; 8.32 mm; 8.29 mm", "bore_deep": "8.31 mm; 8.33 mm; 8.30 mm", "groove": "5.30 mm", "width": "2.40 mm", "head": "8.10 mm"}  # fmt: skip
WASHER = {"place": "washer", "bore": "8.30 mm; 8.30 mm", "rod": "2.40 mm"}
STOCK = ("1.52x5.1", "1.58x5.1", "1.63x5.15", "1.70x5.2", "1.78x5.28", "1.83x5.3")


def with_stock(job, rings=STOCK):
    path = job.bench.folder / "bench.toml"
    text = ", ".join(f'"{ring}"' for ring in rings)
    path.write_text(path.read_text().replace("rings = []", f"rings = [{text}]"))
    return open_job(job.name, bench=open_bench_folder(job.bench.folder))


def try_washer(job, size, happened, dry="yes"):
    return job.add(
        "seal", "trial",
        {"place": "washer", "what": f"washer {size}", "outside": f"{size} mm", "dry": dry, "happened": happened},
    )  # fmt: skip
