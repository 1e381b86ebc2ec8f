"""A file's name is refused where any system would take it for something else."""

import pytest

from pentools.books.exchange.safe_paths import MOST_DEEP, MOST_LONG, doubles, fault_of


@pytest.mark.parametrize(
    "name",
    [
        "record.jsonl",
        "photos/side-before.jpg",
        "scans/schräg, 2.png",
        "a.b.c/d",
        "photos/console.jpg",
        "com10.txt",
        "…/x",
    ],
)
def test_plain_names_are_taken(name):
    assert fault_of(name) == ""


@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("", "no name"),
        ("/etc/passwd", "root"),
        ("//host/share", "root"),
        ("C:evil.txt", "drive"),
        ("c:/evil.txt", "drive"),
        ("..", "leads out"),
        ("photos/../../x", "leads out"),
        ("photos\\..\\x", "backslash"),
        ("photos//x", "no name"),
        ("./x", "no name"),
        ("photos/x/", "no name"),
        ("photos/x\x00.jpg", "cannot be seen"),
        ("photos/x\u202egpj.exe", "cannot be seen"),
        ("photos/x\n", "cannot be seen"),
        ("x.jpg:stream", "one of"),
        ("what?.jpg", "one of"),
        ("photos./x", "full stop"),
        ("photos/x.jpg ", "space"),
        ("nul", "device"),
        ("photos/CON.jpg", "device"),
        ("Lpt1", "device"),
        ("com¹.txt", "device"),
        ("aux .txt", "device"),
        (".ssh/keys", "hidden"),
        ("photos/.hidden", "hidden"),
        ("/".join("a" * (MOST_DEEP + 1)), "deep"),
        ("a" * (MOST_LONG + 1), "longer"),
    ],
)
def test_a_name_that_means_something_else_elsewhere_is_refused(name, why):
    assert why in fault_of(name)


@pytest.mark.parametrize(
    ("names", "both"),
    [
        (["a.jpg", "b.jpg", "photos/a.jpg"], None),
        (["photos/a.jpg", "photos/A.JPG"], ("photos/a.jpg", "photos/A.JPG")),
        (["stra\u00dfe.txt", "STRASSE.txt"], ("stra\u00dfe.txt", "STRASSE.txt")),
        (["caf\u00e9.png", "cafe\u0301.png"], ("caf\u00e9.png", "cafe\u0301.png")),
        (["photos/a.jpg", "Photos/b.jpg"], ("photos", "Photos")),
        (["photos", "photos/a.jpg"], ("photos", "photos")),
        (["a.jpg", "a.jpg"], ("a.jpg", "a.jpg")),
    ],
)
def test_doubles_by_case_accent_and_folder(names, both):
    assert doubles(names) == both
