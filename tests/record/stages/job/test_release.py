"""Release: the ending and the limits that were written must say the same."""

import pytest

from pentools.record.stages.job.release import ending


@pytest.mark.parametrize(
    ("end", "limited", "topics"),
    [
        (None, False, ["open-job"]),
        ("done", False, []),
        ("done", True, ["ending-limits"]),
        ("done with limits", True, []),
        ("done with limits", False, ["ending-limits"]),
        ("stopped", True, []),
        ("returned", False, []),
    ],
)
def test_ending_and_limits_agree(new_job, end, limited, topics):
    job = new_job()
    if limited:
        job.add("limits", "limit", {"part": "cap", "left": "a hairline", "why": "it is stable"})
    if end:
        job.add("release", "result", {"ending": end, "summary": "As it is."})
    stage = job.stage("release")
    assert ending(job) == end
    assert (stage.state_of(job).word, stage.state_of(job).reason) == (("done", end) if end else ("not begun", ""))
    assert [f.topic for f in stage.checks(job)] == topics
