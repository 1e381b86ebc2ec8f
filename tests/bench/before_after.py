"""Every sum on a fixed list of inputs, before and after a change: python tests/bench/before_after.py OLD_TREE NEW_TREE

Each tree is a checkout. Prints how many answers are the same to the last digit, and names the sums and keys that differ.
With --full every difference is printed. For a change that must not change a number.
"""

import collections
import contextlib
import io
import itertools
import json
import math
import os
import subprocess
import sys

DIMENSIONS = {
    "bore": "9.0 mm", "stroke": "28.3 mm", "rod": "2.6 mm", "outside": "6.35 mm", "wall": "0.5 mm", "length": "60 mm",
    "reach": "55 mm", "tube": "2.0 mm", "depth": "55 mm", "nipple": "6.0 mm", "nipple-length": "6 mm",
    "stroke-volume": "0.28 ml",
}  # fmt: skip
SYSTEMS = (
    "eyedropper", "lever-sac", "button-sac", "crescent-sac", "slot-sac", "sleeve-squeeze", "bulb", "diaphragm-pump",
    "plunger-vacuum", "piston", "syringe", "pneumatic-down-stroke", "pneumatic-extending-tube", "bellows", "safety",
    "capillary", "cartridge-converter",
)  # fmt: skip


def grid(key, **choices):
    """Every combination of the choices of some options; None leaves an option out."""
    for values in itertools.product(*choices.values()):
        words = [key]
        for name, value in zip(choices, values, strict=True):
            if value is not None:
                words += ["--" + name.replace("_", "-"), *([value] if isinstance(value, str) else value)]
        yield words


def cases():
    """The fixed list: the words after `pentools sums`."""
    yield from grid(
        "capacity", empty=("23.26 g; 23.25 g; 23.26 g", "23.57 g"), filled=("25.06 g", "25.06 g; 25.05 g"),
        start=("dry", "drained"), readability=("0.01 g", "0.001 g"), temperature=("15 °C", "24 °C"),
        liquid=("water", "ink"), level=("95 %", "95.45 %"),
    )  # fmt: skip
    measured = [word for name, value in DIMENSIONS.items() for word in ("--" + name, value)]
    for system in SYSTEMS:
        for filled in ("24.06 g", "24.86 g", "25.06 g"):
            yield ["capacity", "--empty", "23.26 g", "--filled", filled, "--system", system, *measured]
    series = ("18.214 g; 18.213 g; 18.212 g", "18.21 g; 18.20 g; 18.19 g", "18.300 g; 18.250 g; 18.190 g")
    yield from grid(
        "leak", times=("0 h; 8 h; 24 h", "0 h; 24 h; 72 h"), masses=series, readability=("0.001 g", "0.01 g"),
        gap=(None, "0.05 mm"), seat=("10 mm",), gap_length=("5 mm",),
    )  # fmt: skip
    evidence = (
        "clip 1936/1942",
        "patent 1934",
        "nib c. 1940, replaced",
        "imprint 1938-05/1941",
        "feed 193X",
        "cap after 1950",
    )
    for count in (1, 2, 3):
        for some in itertools.combinations(evidence, count):
            yield ["date", *(word for text in some for word in ("--evidence", text))]
    for price, year in itertools.product(("5.00 USD", "$2.75", "£1 1s", "12/6"), ("1930", "1940", "1955")):
        yield ["money", price, "--year", year, "--to", "2023"]
    yield from grid("seal", bore=("6.30 mm", "7.40 mm", "8.0 mm", "9.10 mm; 9.12 mm; 9.08 mm"), groove=("3.30 mm", "4.50 mm", "5.0 mm"),
                    width=("2.4 mm", "3.0 mm"), duty=("hand-turned", "low-friction", "static"), **{"from": ("as568", "metric")})  # fmt: skip
    yield from grid(
        "seal",
        rod=("1.6 mm", "3.00 mm"),
        housing=("5.2 mm", "6.20 mm"),
        width=("2.4 mm",),
        duty=("hand-turned", "static"),
    )
    yield from grid(
        "sac",
        barrel=("7.6 mm", "8.00 mm", "9.4 mm", "10.5 mm"),
        nipple=("5.5 mm", "6.2 mm", "6.60 mm"),
        depth=("62 mm", None),
        material=("latex", "silicone", "PVC"),
    )
    yield from grid(
        "washer",
        bore=("7.9 mm", "8.30 mm"),
        rod=("1.60 mm", "2.5 mm"),
        kind=("flat", "cup", "cork", "stacked", "felt"),
        length=("6 mm",),
    )
    yield from grid(
        "thread",
        pitch=("0.794 mm", "0.75 mm", "1.0 mm", "0.635 mm"),
        major=("7.10 mm", "9.0 mm", None),
        starts=(None, "1", "3"),
    )
    yield from grid(
        "knockout", tail=("0 mm", "1.80 mm"), shoulder=("3.1 mm", "4.20 mm"), bore=("5.00 mm",), depth=("18 mm", None)
    )
    bodies = ("celluloid", "hard rubber", "casein", "acrylic", "metal", "unknown")
    yield from grid(
        "heat",
        body=bodies,
        sealant=("shellac", "rosin and castor oil", "rosin", "beeswax", "epoxy"),
        passes=(None, "48 °C; 55 °C"),
    )
    treatments = ("cold water soak", "flush mix soak", "ultrasonic", "dry heat", "alcohol")
    yield from grid("treatment", material=(*bodies[:4], "unknown", "silver", "latex"), treatment=treatments)
    yield from grid(
        "mix",
        ammonia=("5 %", "7 %", "10 %", "25 %"),
        parts_water=("9", "5"),
        room=("30 m3", "5 m3"),
        jar=("100 ml", "5 l"),
    )
    yield from grid("dilute", liquid=("alcohol",), strong=("91 %", "99 %"), wanted=("70 %", "50 %"))
    yield from grid("dilute", liquid=("peroxide",), strong=("3 %", "6 %"), wanted=("1 %",))
    yield from grid("shellac", cut=("2", "3"), thin_to=(None, "1"))
    yield from grid("abrasives", material=("celluloid", "acrylic", "hard rubber", "solid gold", "brass"), defect=("20 um", "light scratch", "hairline"),
                    finish=("gloss", "satin"), own=("P600; P1200; P2500; film 9 um; film 3 um",), zone=("plain barrel", "near an imprint"), trim=("solid", "none"))  # fmt: skip
    for grade in ("P400", "P2500", "CAMI 320", "film 9 um", "F800", "JIS 1000"):
        yield ["grade", grade]


def answers():
    """Run every case in this process; one JSON line each: words, exit code, output."""
    from pentools.cli import main

    for words in cases():
        out, err = io.StringIO(), io.StringIO()
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            try:
                code = main(["sums", *words, "--json"])
            except SystemExit as stop:
                code = stop.code
        print(json.dumps([words, code, out.getvalue() or err.getvalue()]))


def run_in(tree):
    """The answers of a checkout."""
    environment = {**os.environ, "PYTHONPATH": str(tree), "PENTOOLS_BENCH": os.devnull + "-none"}
    run = subprocess.run(
        [sys.executable, __file__, "--answers"], env=environment, capture_output=True, text=True, check=True
    )
    return [json.loads(line) for line in run.stdout.splitlines()]


def differences(old, new, at=""):
    """Where two JSON values differ."""
    if isinstance(old, dict) and isinstance(new, dict):
        for name in old.keys() | new.keys():
            if name in old:  # a key more takes nothing away
                yield from differences(old[name], new.get(name, "gone"), f"{at}.{name}")
    elif isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
        for one, other in zip(old, new, strict=True):
            yield from differences(one, other, f"{at}[]")
    elif isinstance(old, float) and isinstance(new, int | float):
        if not math.isclose(old, new, rel_tol=1e-12, abs_tol=1e-12):
            yield f"{at}: {old} -> {new}"
    elif old != new:
        yield f"{at}: {json.dumps(old, ensure_ascii=False)[:300]} -> {json.dumps(new, ensure_ascii=False)[:300]}"


def main():
    """Compare two trees."""
    if "--answers" in sys.argv:
        answers()
        return
    old, new = run_in(sys.argv[1]), run_in(sys.argv[2])
    same, changed = 0, collections.Counter()
    for (words, code, before), (_, code_after, after) in zip(old, new, strict=True):
        try:
            found = list(differences(json.loads(before), json.loads(after)))
        except ValueError:
            found = [] if before == after else [f": {before!r} -> {after!r}"]
        if code != code_after:
            found.append(f": exit code {code} -> {code_after}")
        same += not found
        for one in found:
            changed[words[0], one.split(":")[0]] += 1
        if found and "--full" in sys.argv:
            print(" ".join(words), *found, sep="\n    ")
    print(f"{same} of {len(old)} answers are the same to the last digit")
    for (key, place), count in sorted(changed.items()):
        print(f"  {key}{place}: {count}")


if __name__ == "__main__":
    main()
