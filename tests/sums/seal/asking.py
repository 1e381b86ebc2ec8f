"""Ask a sum as the command line does, and hold its answer to the form that every answer has."""

import json

from pentools.sums.base import read_options


def ask(chosen, **texts):
    """The answer to typed options; its JSON is plain, says the same as the answer, and its table has one width."""
    answer = chosen.run(read_options(chosen.fields, texts))
    assert json.loads(json.dumps(answer.data, allow_nan=False)) == answer.data
    assert answer.data["sentence"] == answer.sentence
    assert answer.data["findings"] == [f.as_json() for f in answer.findings]
    assert len({len(row) for row in answer.table}) == 1
    return answer
