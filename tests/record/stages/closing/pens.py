"""A lever pen as it goes back together."""

from pentools.sums.closing.work import step_keys

KEYS = step_keys("lever-sac")


def tick(job, done=(), tested=(), **more):
    return job.add("closing", "order", {"done": "; ".join(done), "tested": "; ".join(tested), **more})


def up_to(job, key, **more):
    """Everything before a step, done and tested."""
    steps = KEYS[: KEYS.index(key)]
    return tick(job, steps, steps, so_before="clean-dry; pictured; joint-dried", **more)
