"""What several tests of the finish stage type."""

from pentools.record.job import create_job
from pentools.record.stages.finish.words import finish_findings

STOCK = 'abrasives = ["P400", "P600", "P800", "P1200", "P2000", "film 9 um", "film 5 um", "cushioned cloth 12000 = 2 um, finish 3 um"]'


def new_pen(bench, name, material="celluloid"):
    job = create_job(bench, name)
    arrival = {
        "pen": "a drawn pen",
        "system": "lever-sac",
        "material": material,
        "barrel_mm": "70 mm",
        "barrel_outside_mm": "12 mm",
    }
    job.add("intake", "arrival", arrival)
    return job


def plan(job, **more):
    job.add("finish", "plan", {"defect": "20 um", "finish": "gloss", "zone": "plain barrel", "trim": "plated", **more})


def ready(job):
    job.add("finish", "consent to polish", {"agreed": "yes", "channel": "letter"})
    job.add("finish", "masks on", {"masks": "yes"})


def topics(job):
    return {finding.topic for finding in finish_findings(job)}


def one_measured_stage(job, before, after, minutes, grade="P600"):
    job.add("finish", "measure", {"station": "middle", "diameter": f"{before} mm ± 0.002 mm"})
    job.add("finish", "step", {"grade": grade, "minutes": f"{minutes} min"})
    job.add("finish", "measure", {"station": "middle", "diameter": f"{after} mm ± 0.002 mm"})
