"""What the drawer says to the sums: sizes beside those of bench.toml, nothing that is used up, and what cannot be read is said."""

import pytest

from pentools.answers.asking import answer_to
from pentools.record.bench import open_bench_folder
from pentools.record.drawer import DRAWER

HEAD = "kind,what,size,lot,how many\n"


def bench_with(folder, lines, toml=""):
    (folder / "bench.toml").write_text(toml)
    (folder / DRAWER).write_text(HEAD + lines)
    return open_bench_folder(folder)


def test_sizes_join_those_of_the_bench_file(tmp_path):
    bench = bench_with(
        tmp_path,
        'ring,nitrile,1.78x5.28,bag,3\nring,used up,1.78x6.07,,0\nsac,latex sac 17,,,\nsac,silicone,6.4 mm,,2\nsheet,cork for heads,6 mm,,\n'
        'washer,flat,8.5x1.5,,1\nabrasive,film 9 um,,,\nabrasive,my paper,P800,,\npart,clip,,,1\nadhesive,shellac,,,1\n',
        '[stock]\nrings = ["2.0x5.0"]\nabrasives = ["P400"]\nsacs = ["latex 15"]\n',
    )  # fmt: skip
    assert bench.problems == ()
    assert bench.facts["stock"] == {
        "rings": ["2.0x5.0", "nitrile=1.78x5.28"], "abrasives": ["P400", "film 9 um", "P800"],
        "sacs": ["latex 15", "latex sac 17=latex 17", "silicone=silicone 6.4 mm"],
        "washers": ["cork for heads=cork sheet 6 mm", "flat=washer 8.5x1.5"],
    }  # fmt: skip


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("ring,a,5.28x1.78,,", "were the two swapped"),
        ("ring,a,one inch,,", "section x inside"),
        ("sac,sac 16,,,", "a sac with its material"),
        ("sheet,nitrile,thin,,", "a sheet with its thickness"),
        ("abrasive,my paper,,,", "line 2:"),
    ],
)
def test_a_size_that_no_sum_can_read_is_said_and_passed_by(tmp_path, line, said):
    bench = bench_with(tmp_path, line + "\n")
    assert [said in problem and problem.endswith("The sums pass it by.") for problem in bench.problems] == [True]
    assert not any(bench.facts["stock"].values())


def test_sums_take_them_from_there(tmp_path):
    bench = bench_with(tmp_path, "sac,latex sac 17,,bag,3\nwasher,flat,8.5x1.5,,1\n")
    sac = answer_to("sac", {"barrel": "8.00 mm", "nipple": "6.20 mm"}, bench)
    assert (sac.data["size"], sac.data["in_drawer"], sac.data["from_bench"]) == ("latex sac 17", True, ["drawer"])
    washer = answer_to("washer", {"bore": "8.30 mm", "rod": "1.60 mm"}, bench)
    assert washer.data["in_drawer"] == ["flat"]


def test_counts_days_and_costs_are_no_facts(tmp_path):
    before = bench_with(tmp_path, "sac,latex sac 17,,bag,3\n").facts
    assert bench_with(tmp_path, "sac,latex sac 17,,another bag,2\n").facts == before
