"""What materials can take, heat, and what is mixed."""

from __future__ import annotations

from pentools.answers.asking import Answer, Several, Typed, ask

__all__ = ["dilution", "flush_mix", "heat_window", "shellac_cut", "treatment_limits"]


def treatment_limits(material: Typed, treatment: Typed, *, overrule: str | None = None, reason: Typed = None) -> Answer:
    """Whether a treatment is ok, limited or never on a material, how far, why, and how sure that is.

    Parameters
    ----------
    material : Typed
        Material; such as celluloid, casein, hard rubber; unknown takes the strictest limits; unknown unless said.
    treatment : Typed
        Treatment; such as cold water soak, hot water, damp wipe, flush mix soak, ultrasonic, dry heat, alcohol, epoxy.
    overrule : str | None
        The bench says instead; one of ok, limited, never.
    reason : Typed
        Reason for overruling; it stays with the result.

    Returns
    -------
    Answer
        Sentence, findings, table and data.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> treatment_limits("celluloid", "flush mix soak").data["verdict"]
    'limited'
    """
    return ask("treatment", locals())


def heat_window(body: Typed, sealant: Typed = None, *, passes: Several = None) -> Answer:
    """How much room there is between the sealant softening and the body giving way.

    Parameters
    ----------
    body : Typed
        Body; such as celluloid, hard rubber, casein, acrylic, bare metal; unknown if it is not named.
    sealant : Typed
        Joint sealant; such as shellac, rosin and castor oil, beeswax, epoxy, none; unknown unless said, taken as what softens last.
    passes : Several
        Heatings so far [°C], 15 to 150; surface temperature of each, such as 48 °C; 55 °C.

    Returns
    -------
    Answer
        Sentence, findings, table and data.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> heat_window("celluloid", "shellac").data["body_limit_c"]
    60.0
    """
    return ask("heat", locals())


def flush_mix(
    *, ammonia: Typed, parts_water: Typed = None, jar: Typed = None, room: Typed = None, beside: Several = None
) -> Answer:
    """How strong a mix of household ammonia and water is, its pH, the room's air, and what it must not meet.

    Parameters
    ----------
    ammonia : Typed
        Household ammonia [%]; strength by weight from the label, such as 7 %.
    parts_water : Typed
        Parts of water to one part, 1 to 200; by volume, such as 9; 9 unless said.
    jar : Typed
        How much is mixed [ml], 1 to 5000; such as 100 ml; 100 ml unless said.
    room : Typed
        Size of the room [m3], 1 to 1000; such as 30 m3; 30 m3 unless said.
    beside : Several
        What it would meet; materials, or anything that stands by, such as brass; casein; bleach.

    Returns
    -------
    Answer
        Sentence, findings, table and data.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> round(flush_mix(ammonia="7 %", parts_water=9).data["ammonia_percent_w_w"], 2)
    0.68
    """
    return ask("mix", locals())


def dilution(*, liquid: str | None, strong: Typed, wanted: Typed, volume: Typed = None) -> Answer:
    """How much of a strong peroxide or alcohol and how much water make a weaker one.

    Parameters
    ----------
    liquid : str | None
        Which; one of peroxide, alcohol.
    strong : Typed
        Strength at hand [%], 0.1 to 100, peroxide at most 12; from the label, such as 3 %.
    wanted : Typed
        Strength wanted [%], 0.05 to 100; such as 1 %.
    volume : Typed
        How much [ml], 1 to 5000; such as 90 ml; 100 ml unless said.

    Returns
    -------
    Answer
        Sentence, findings, table and data.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> round(dilution(liquid="alcohol", strong="91 %", wanted="70 %", volume="100 ml").data["strong_ml"], 1)
    76.9
    """
    return ask("dilute", locals())


def shellac_cut(*, cut: Typed, alcohol: Typed = None, thin_to: Typed = None) -> Answer:
    """How many flakes make a cut of shellac, and how much alcohol thins one cut to another.

    Parameters
    ----------
    cut : Typed
        Cut, 0.1 to 6; pounds of flakes to a US gallon of alcohol, such as 3.
    alcohol : Typed
        Alcohol [ml], 1 to 5000; such as 30 ml; 30 ml unless said.
    thin_to : Typed
        Thin it to, 0.1 to 6; the weaker cut wanted, such as 1.

    Returns
    -------
    Answer
        Sentence, findings, table and data.

    Raises
    ------
    InputError
        If a value cannot be used, or one that is needed is missing.

    Examples
    --------
    >>> print(shellac_cut(cut=3, alcohol="30 ml"))  # doctest: +ELLIPSIS
    10.8 g of flakes ...
    """
    return ask("shellac", locals())
