"""What the tests of progressions share: sheets, limits and plans in short words."""

from pentools.calc.finish.limits import strictest_zone
from pentools.calc.finish.progression import grit_progression
from pentools.calc.finish.reading import read_grades
from pentools.calc.finish.types import PlanLimits
from pentools.tables.abrasives import catalogue, materials, media, zones

SHEETS = "P400; P600; P800; P1200; P2000; film 9 um; film 5 um; film 3 um"
CLOTHS = "P400; P600; cushioned cloth 2000; cushioned cloth 3000; cushioned cloth 5000; cushioned cloth 7000; cushioned cloth 12000"


def owned(text):
    return read_grades(text, catalogue())


def limits(material="celluloid", zone="plain barrel", **more):
    own = zones().get(materials()[material].zone)
    return PlanLimits(
        materials()[material], strictest_zone(zones().get(zone), own), media(), **{"trim": "solid", **more}
    )


def plan(defect, finish, text, *, material="celluloid", zone="plain barrel", **more):
    return grit_progression(defect, finish, owned(text), limits(material, zone, **more), catalogue=catalogue())


def topics(p, level=None):
    return [f.topic for f in p.findings if level in (None, f.level)]


def names(p):
    return [s.grade.label for s in p.steps]
