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
    "yes-no": [0, 1, "yes", "", [], {}],
    "date": [2026, True, [], {}, "2026-W11", "20260314", "2026-02-30", "14.3.2026"],
    "photo": [1, True, [], {}, "../owner.jpg", "/etc/passwd", "script.svg"],
    "items": ["cap", 1, True, {}, [1], [None], [["cap"]]],
}  # fmt: skip
WRONG |= dict.fromkeys(("long text", "money"), WRONG["text"])
