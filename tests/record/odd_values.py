"""Values that no program should have written, by kind of field."""

GRAM = {"value": 15.0, "unit": "g", "u": None, "typed": "15 g"}
MANY = 10**400
WRONG = {
    "quantity": ["15 g", 15.0, True, [], [GRAM], {}, {**GRAM, "unit": "furlong"}, {**GRAM, "value": "15"},
                 {**GRAM, "value": MANY}, {**GRAM, "u": "x"}, {**GRAM, "u": -1}, {**GRAM, "typed": 3}],
    "quantities": ["15 g", GRAM, [15.0], [None], [{}], 3, True],
    "number": ["1", True, [], {}, MANY],
    "count": ["1", 1.5, True, [], {}, MANY],
    "text": [1, 1.5, True, [], ["a"], {}],
    "choice": [1, True, [], {}, "no such choice", "", ["dry"]],
    "ticks": ["cap", 1, True, {}, [1], [None], [""], ["no such choice"], [["cap"]]],
    "yes-no": [0, 1, "yes", "", [], {}],
    "date": [2026, True, [], {}, "2026-W11", "20260314", "2026-02-30", "14.3.2026"],
    "photo": [1, True, [], {}, "../owner.jpg", "/etc/passwd", "script.svg"],
    "items": ["cap", 1, True, {}, [1], [None], [["cap"]]],
}  # fmt: skip
WRONG |= dict.fromkeys(("long text", "money"), WRONG["text"])


def line_with(**parts):
    """A line whose members are given as they would stand in the file."""
    usual = {"id": '"a"', "at": '"2026-03-01T09:00:00+01:00"', "stage": '"intake"', "kind": '"arrival"',
             "data": "{}", "note": '""', "replaces": "null", "format": "1"}  # fmt: skip
    usual |= parts
    return ("{" + ",".join(f'"{name}":{part}' for name, part in usual.items() if part) + "}").encode()


ODD_PARTS = {
    "NaN": ({"data": '{"mass":NaN}'}, "invalid character"),
    "Infinity": ({"data": '{"mass":-Infinity}'}, "invalid"),
    "beyond all numbers": ({"data": '{"mass":1e999}'}, "out of range"),
    "5,000 digits": ({"data": '{"mass":' + "9" * 5000 + "}"}, "out of range"),
    "nesting": ({"data": '{"pen":' + '{"a":' * 2000 + "1" + "}" * 2000 + "}"}, "nested too deep"),
    "half a character": ({"data": '{"pen":"a \\ud83d pen"}'}, "“\\ud83d” is half a character"),
    "a list": ({"data": "[1]"}, "Expected `object`, got `array`"),
    "no data": ({"data": ""}, "missing required field `data`"),
    "a null byte": ({"data": '{"pen":"\x00"}'}, "invalid character"),
    "a name twice": ({"data": '{"pen":"green","pen":"black"}'}, "“pen” is given twice"),
    "a reading's name twice": ({"data": '{"m":{"value":1,"value":2}}'}, "“value” is given twice"),
    "a remark": ({"note": "5"}, "Expected `str`, got `int`"),
    "a target": ({"replaces": '["b"]'}, "got `array`"),
    "a form": ({"format": '"one"'}, "got `str`"),
    "a form of 400 figures": ({"format": "9" * 400}, "Expected `int` <= 999"),
    "a form below all": ({"format": "0"}, "Expected `int` >= 1"),
}
"""Members of a line that make an entry unreadable and leave its place plain, and what its reason says."""
