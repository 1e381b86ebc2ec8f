"""The words people use for materials, treatments and sealants: plain data, read by `pentools.calc.treatment.materials`.

A name of the tables stands before its everyday names; hyphens count as spaces. The other lists say which words may stand
beside a name without making it doubtful: how a plastic looks, which part it is, what light or decay has done to it.
"""

from __future__ import annotations

import re

__all__ = [
    "BLACK", "CARAT", "COLOURED_RUBBER", "COLOURS", "DECAY", "DOUBT", "FADED", "MATERIALS", "METALS", "METAL_LOOKS", "NEUTRAL",
    "NO_SEALANT", "PATTERNS", "SEALANTS", "SMALL", "SOFT", "SPELLINGS", "TREATMENTS", "TRIM", "UNKNOWN",
]  # fmt: skip

UNKNOWN = "unknown"
NO_SEALANT = "none"


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


MATERIALS: dict[str, str] = {
    "celluloid": "celluloid; cellulose nitrate; nitrocellulose; nitrate; pyroxylin; nitrate celluloid",
    "degrading celluloid": "degrading celluloid; degrading nitrate; degrading cellulose nitrate",
    "hard rubber": "hard rubber; ebonite; vulcanite; vulcanised rubber; bhr; bchr; hardened rubber; chased rubber",
    "faded hard rubber": "faded hard rubber",
    "coloured hard rubber": "coloured hard rubber; rhr; mhr; red ripple; orange ripple; red mottled; mottled rubber; red rubber; red woodgrain",
    "casein": "casein; casein formaldehyde; casein plastic; formaldehyde casein; milk casein",
    "cellulose acetate": "cellulose acetate; acetate; cellulose diacetate; diacetate",
    "acrylic": "acrylic; pmma; polymethyl methacrylate; methyl methacrylate; methacrylate; polymethylmethacrylate; acrylic resin; acrylic plastic; acrylic glass; acrylics; pmma acrylic",
    "polystyrene": "polystyrene; styrene; ps; polystyrene plastic",
    "ABS": "abs; abs plastic; acrylonitrile butadiene styrene",
    "phenolic": "phenolic; phenolic resin; phenol formaldehyde; phenol formaldehyde resin; phenolics; phenolic plastic; cast phenolic; pf resin",
    "nylon": "nylon; nylon 6,6; nylon 66; nylon 6; polyamide; pa 66; pa66",
    "lacquer": "lacquer; lacquered; urushi; maki e; nitro lacquer; nitrocellulose lacquer; nitrate lacquer; cellulose lacquer; chinese lacquer; japanese lacquer; lacquer over metal; lacquer over brass; lacquer over hard rubber; lacquered brass; lacquered metal; lacquered steel; lacquered aluminium; lacquered wood",
    "gold nib": "gold nib; solid gold; gold",
    "gold-filled": "gold filled; rolled gold; plated brass; gold plated brass; goldfilled; rolled gold plate; gold plate on brass",
    "gold-plated steel": "gold plated steel; gold plated steel nib",
    "steel nib": "steel nib; steel; plain steel; carbon steel; spring steel; nickel plated steel; tinned steel; blued steel",
    "stainless steel": "stainless steel; stainless; stainless steel nib",
    "chrome": "chrome; chromium; chrome plate; chrome plated; chromium plate; chromium plated; chromed; chrome plated brass; chrome plated steel; chromium plated brass; chrome plated metal; chromed brass; chromed steel; chrome over brass",
    "aluminium": "aluminium; anodised aluminium; aluminium alloy; duralumin",
    "brass": "brass; copper; bronze; nickel silver; german silver",
    "silver": "silver; sterling; sterling silver; solid silver; coin silver; vermeil",
    "metal overlay": "metal overlay; overlay",
    "cork": "cork",
    "latex": "latex; natural rubber; latex rubber; rubber sac; latex sac; soft rubber; gum rubber; rubber diaphragm",
    "silicone": "silicone; silicone rubber; silicone sac",
    "plasticised PVC": "plasticised pvc; pvc; vinyl; pvc sac; soft pvc; plasticised polyvinyl chloride",
    "bare metal": "bare metal; plain metal; unlacquered metal",
    UNKNOWN: "unknown; not known; not named; ?",
}  # fmt: skip
TREATMENTS: dict[str, str] = {
    "cold water soak": "soak; water; water soak; cold soak; cold water; cool water; cool water soak; cold bath; water bath",
    "hot water": "hot water soak; warm water; warm water soak; boiling water; hot bath; warm bath; steam",
    "damp wipe": "wipe; damp cloth; damp swab; damp rag; moist cloth; wet wipe; wiping; damp wiping",
    "flush mix soak": "flush mix; flush; ammonia; ammonia flush; pen flush; ammonia soak; ammonia water; household ammonia; window cleaner; ammonia cleaner",
    "ultrasonic": "ultrasonic bath; ultrasound; ultrasonic cleaner; ultrasonic tank",
    "dry heat": "heat; hot air; heat gun; warming; warm air; hair dryer; heating",
    "alcohol": "isopropyl alcohol; isopropanol; ipa; ethanol; spirit; methylated spirit; denatured alcohol; rubbing alcohol",
    "acetone": "nail varnish remover; nail polish remover",
    "naphtha": "lighter fluid; petroleum ether; white gas",
    "silicone grease": "grease",
    "wet sanding": "sanding; wet sand; abrasive paper",
    "buffing wheel": "buffing; wheel; polishing wheel; buffer",
    "microcrystalline wax": "wax; paste wax; polishing wax",
    "peroxide": "hydrogen peroxide; peroxide 3 %; hydrogen peroxide 3 %",
    "bleach": "chlorine bleach; household bleach; sodium hypochlorite; hypochlorite; chlorine cleaner",
    "naphtha-based sealant": "thread sealant; naphtha based sealant",
    "shellac in alcohol": "shellac",
    "cyanoacrylate": "superglue; super glue; instant glue; ca glue",
    "epoxy": "epoxy resin; epoxy glue; two part glue; two part epoxy",
    "solvent weld": "crack weld; welding; solvent welding; solvent cement; weld; acetone weld; fusing a crack",
    "heat-set feed": "heat set feed; heat setting; heat set; setting the feed; heat setting a feed; feed setting",
}  # fmt: skip
SEALANTS: dict[str, str] = {
    "shellac": "shellac in alcohol; shellac flakes; shellac varnish",
    "rosin and castor oil": "rosin sealant; rosin based sealant; thread sealant; rosin + castor oil; section sealant; castor oil and rosin",
    "rosin": "neat rosin; colophony",
    "paraffin": "paraffin wax; candle wax",
    "beeswax": "bees wax",
    "microcrystalline wax": "micro crystalline wax",
    "cyanoacrylate": "superglue; super glue; instant glue",
    "epoxy": "epoxy resin; two part glue; epoxy glue",
    "silicone grease": "grease; silicone",
    "solvent weld": "weld; welded; solvent welded; solvent cement",
    NO_SEALANT: "nothing; no sealant; dry; bare; friction fit",
    UNKNOWN: "not known; not named; not sure; ?; unsure; glue; wax; sealant; cement; resin",
}  # fmt: skip
SPELLINGS = {
    "colored": "coloured", "vulcanized": "vulcanised", "oxidized": "oxidised", "plasticized": "plasticised", "gray": "grey",
    "aluminum": "aluminium", "anodized": "anodised", "discolored": "discoloured", "color": "colour", "tortoiseshell": "tortoise",
    "tri": "three", "marbled": "marble", "mottle": "mottled", "rippled": "ripple", "lined": "line", "striped": "stripe",
}  # fmt: skip
COLOURS = _words(
    """amber aqua azure beige black blue bronze brown burgundy claret clear copper coral cream crimson dark deep ebony
emerald garnet gold golden green grey indigo ivory jade jet lapis lavender light lilac lime magenta maroon mauve
midnight mint mustard navy ochre olive opaque orange pale peach pearl pink plum purple red rose royal ruby rust
scarlet silver sky smoke smoky tan teal terracotta topaz transparent translucent transparency turquoise two three
colour tone ultramarine vermilion violet white wine yellow"""
)
PATTERNS = _words(
    """band banded barleycorn cast moulded chased chasing chevron cracked ice crosshatched engraved engine turned facetted
faceted fleck flecked flake flame gloss glossy grain grained guilloche herringbone laminated line marble marbling matt
matte moire mosaic mother of mottled pearled pearlescent plain pinstripe ribbon ridged ringed ripple smooth snakeskin
speckled spiral stacked stripe swirl swirled swirly tortoise veined wave waved wavy web woodgrain woven horizontal
vertical bright pattern patterned"""
)
NEUTRAL = _words(
    """a an and antique barrel barrels body bodied blind cap caps end feed fine heavy inner knob made modern of old original
part parts pen piece rod section solid sound stock the thick thin tube vintage whole all"""
)
METAL_LOOKS = _words(
    """brushed bright burnished dull engraved hallmarked nib polished sprung tarnished unplated cast"""
)
SMALL = _words(
    """bladder diaphragm disc gasket o packing ring sac seal seals sheet tubing washer black translucent new clear"""
)
TRIM = _words("""band bands clip clips fittings furniture lever nib ring rings trim trims""")
FADED = _words("""brown browned discoloured faded fading olive oxidised yellowed dulled greyed greenish brownish""")
COLOURED_RUBBER = _words("""red orange mottled ripple woodgrain rosewood cardinal marble flame coloured""")
BLACK = _words("black jet ebony dark") | PATTERNS - _words("mottled ripple woodgrain marble flame ice")
DECAY = _words(
    """crazed crazing crumbling decaying decayed degraded degrading degradation deteriorating deteriorated rotten rotting
sour sweating sweaty crystallised crystallising"""
)
DOUBT = re.compile(
    r"\?|\b(unknown|not|no|un\w+|perhaps|maybe|probab\w*|possib\w*|presum\w*|likely|might|may|could|looks?|like|seem\w*|appear\w*|apparently|"
    r"guess\w*|think|believe\w*|suspect\w*|assum\w*|suppos\w*|some|kind|sort|or|either|similar|type|imitation|faux|fake|said|sold|described|"
    r"doubt\w*|tbd|confirm\w*|hopefully|tentative\w*|could|would|should|if|almost|nearly|mostly|about)\b"
)
METALS = ("gold nib", "gold-filled", "gold-plated steel", "steel nib", "stainless steel", "chrome", "aluminium", "brass", "silver")  # fmt: skip
SOFT = ("cork", "latex", "silicone", "plasticised PVC")
CARAT = re.compile(r"\d+(/\d+)?(k|kt|ct|c|carat|karat)?|k|kt|ct|carat|karat")
