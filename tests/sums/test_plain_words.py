"""What every sum says over a fixed list of questions: plain numbers, a sentence, and words filled with their values."""

import importlib.util
import json
import re
from pathlib import Path

import pytest

from pentools.answers.asking import answer_to
from pentools.errors import InputError
from pentools.sums import SUMS, find

LIST = Path(__file__).resolve().parents[1] / "bench" / "before_after.py"
EDGES = [
    ["capacity", "--empty", "23.26 g", "--filled", "23.26 g"],
    ["capacity", "--empty", "23.2600 g; 23.2600 g", "--filled", "23.2601 g", "--readability", "0.0001 g"],
    ["capacity", "--empty", "20 g", "--filled", "199 g", "--readability", "1 g"],
    ["capacity", "--empty", "23.26 g", "--filled", "23.36 g", "--readability", "0.1 g", "--system", "piston", "--bore", "9 mm", "--stroke", "31 mm", "--rod", "3 mm"],
    ["capacity", "--empty", "23.26 g", "--filled", "25.06 g", "--system", "piston", "--bore", "30 mm", "--stroke", "150 mm", "--rod", "1 mm"],
    ["leak", "--times", "0 h; 8 h; 24 h", "--masses", "18.21 g; 18.21 g; 18.21 g"],
    ["leak", "--times", "0 h; 24 h", "--masses", "18.20 g; 18.21 g"],
    ["leak", "--times", "0 h; 0.1 h", "--masses", "18.20 g; 17.21 g"],
    ["leak", "--times", "0 h; 2000 h", "--masses", "18.20001 g; 18.20000 g", "--readability", "0.00001 g", "--repeatability", "0 g", "--gap", "0.001 mm", "--seat", "2 mm", "--gap-length", "40 mm"],
    ["money", "0.01 USD", "--year", "1920", "--to", "1933"],
    ["money", "1234567.89 USD", "--year", "1913"],
    ["seal", "--bore", "29.9 mm", "--groove", "27.9 mm", "--width", "0.6 mm"],
    ["seal", "--bore", "2.1 mm", "--groove", "0.6 mm", "--width", "0.5 mm", "--all", "yes"],
    ["washer", "--bore", "8.30 mm", "--rod", "8.20 mm"],
    ["thread", "--crests", "10.00 mm", "--major", "14.25 mm", "--starts", "12"],
    ["mix", "--ammonia", "35 %", "--parts-water", "1", "--jar", "5 l", "--room", "1 m3"],
    ["mix", "--ammonia", "0.1 %", "--parts-water", "200", "--jar", "1 ml", "--room", "1000 m3"],
    ["dilute", "--liquid", "alcohol", "--strong", "70 %", "--wanted", "0.01 %", "--volume", "5 l"],
    ["shellac", "--cut", "0.1", "--alcohol", "1 ml"],
    ["abrasives", "--material", "celluloid", "--defect", "140 ± 20 um", "--own", "P80; P120; P180; P240; P400; P800", "--wall", "5 mm"],
    ["abrasives", "--material", "celluloid", "--defect", "0.1 um", "--own", "film 0.1 um; film 0.05 um", "--finish", "0.05 um"],
    ["grade", "P12"],
    ["flow", "--before", "23.512 g", "--after", "23.422 g", "--length", "18 m", "--readability", "0.001 g", "--width", "0.05 mm"],
    ["flow", "--before", "23.51 g", "--after", "23.51 g", "--length", "0.1 m"],
    ["flow", "--before", "199 g", "--after", "0 g", "--length", "0.1 m", "--idle", "0 mg", "--readability", "0.00001 g"],
    ["flex", "--loads", "0 gf; 500 gf", "--widths", "0.02 mm; 8 mm", "--printed", "0.001"],
    ["flex", "--loads", "15 g; 40 g; 60 g", "--widths", "0.50 mm; 0.80 mm; 1.00 mm", "--metal", "steel", "--angle", "45 deg"],
    ["smoothing", "--feel", "scratchy", "--own", "P400"],
    ["smoothing", "--feel", "reshaped", "--own", "film 12 um; film 0.1 um"],
    ["scanner", "sample"],
    ["setting"],
    ["setting", "--feed", "hard rubber", "--section", "casein", "--nipple", "bare"],
    ["order", "--system", "lever-sac"],
    ["order", "--system", "piston", "--way", "open", "--done", "1; 2"],
    ["care", "--system", "eyedropper"],
    ["lines", "sample"],
    ["lines", "sample", "--threshold", "0.6"],
]  # fmt: skip
EXPONENT = re.compile(r"\d[eE][+-]?\d")
NOUGHT = re.compile(r"(?<![\w.,])[-−]0(?:[.,]0+)?(?![\d.,]*[1-9])(?![\w])")
NO_NUMBER = re.compile(r"\b(?:nan|inf|None)\b")


def questions():
    spec = importlib.util.spec_from_file_location("before_after", LIST)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    listed = [words for number, words in enumerate(module.cases()) if number % 5 == 0]
    for words in [*listed, *EDGES]:
        key, *rest = words
        texts, name = {}, find(key).positional
        for word in rest:
            if word.startswith("--"):
                name = word[2:].replace("-", "_")
            else:
                texts[name] = f"{texts[name]}; {word}" if name in texts else word
        yield words, key, texts


def told(answer):
    yield answer.sentence
    yield from (finding.text for finding in answer.findings)
    yield from (cell for row in answer.table for cell in row)
    yield answer.data["sentence"]


def odd(text):
    return EXPONENT.search(text) or NOUGHT.search(text) or NO_NUMBER.search(text)


def test_odd_numbers_are_seen():
    assert all(odd(text) for text in ("1.4e+02 µm", "-0 mg/h", "−0.00 g", "at -0.0", "None mm", "nan g", "1E5"))
    assert not any(odd(text) for text in ("-0.01 g", "−0.5", "140 µm", "10-0.2", "Nonesuch", "a 2e-mail", "P400", "1936-05"))  # fmt: skip


def test_every_answer_is_in_plain_words():
    wrong, asked = [], set()
    for words, key, texts in questions():
        try:
            answer = answer_to(key, texts)
        except InputError as refused:
            found = [str(refused).replace("None of", "")]
        else:
            asked.add(key)
            found = list(told(answer))
            json.dumps(answer.data, allow_nan=False)
        wrong += [f"{' '.join(words)}: {text}" for text in found if odd(text)]
    assert not wrong, "\n".join(wrong)
    assert asked == set(SUMS)


@pytest.mark.parametrize("key", SUMS)
def test_every_sum_s_json_begins_with_its_sentence(key):
    words = {"capacity": {"empty": "1 g", "filled": "2 g"}, "grade": {"grade": "P400"}}.get(key)
    if words is None:
        words = next(texts for _, other, texts in questions() if other == key)
    answer = answer_to(key, words)
    assert next(iter(answer.data)) == "sentence"
    assert answer.data["sentence"] == answer.sentence
    assert answer.sentence.endswith((".", "?"))
