"""Asking a sum of treatment as it is typed."""

import json

from pentools.sums import read_options


def ask(chosen, **typed):
    answer = chosen.run(read_options(chosen.fields, typed))
    json.dumps(answer.data, allow_nan=False)
    assert answer.data["findings"] == [f.as_json() for f in answer.findings]
    assert answer.sentence
    return answer
