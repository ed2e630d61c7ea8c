"""The answers that are put together from records, and what lengths and figures are written as."""

from lacunar.exchange.answer_schema import Json, record_schemas, reference
from lacunar.exchange.estimate_answers import estimate_answer
from lacunar.exchange.options_schema import options_schema
from lacunar.measure.rounding import STEPS
from lacunar.measure.units import Units
from lacunar.model.panel import PanelKind

_LENGTH = {
    "exact": {
        "type": "string",
        "description": "The length without any loss, a number or fraction and its unit: in or mm."
        " It may be sent back as it stands.",
        "examples": ["769/16 in"],
    },
    "text": {
        "type": "string",
        "description": "As read off a tape, rounded to the marking step.",
        "examples": ["4'-0 1/16\""],
    },
    "in": {"type": "number", "description": "In inches [in], rounded to 6 decimals."},
    "mm": {"type": "number", "description": "In millimeters [mm], rounded to 6 decimals."},
}

_ANGLE = {
    "exact": {"type": "string", "description": "The degrees without any loss, and `deg`."},
    "text": {"type": "string", "description": "As a saw is set, to a tenth of a degree."},
    "degrees": {"type": "number", "description": "In degrees, rounded to 6 decimals."},
}

_REASON = {
    "approximate": {
        "type": "boolean",
        "description": "True where the figure rests on something averaged, or rounded because it"
        " has no exact form, such as a sine: to 1/8000 mm, or a billionth of a degree. Absent where"
        " exact.",
    },
    "rule": {"type": "string", "description": "With trace=1: the rule that gave the figure."},
    "formula": {
        "type": "string",
        "description": "With trace=1: the rule's formula; lengths stand in it as inches [in].",
    },
    "operands": {
        "type": "object",
        "description": "With trace=1: what stood for each name in the formula.",
        "additionalProperties": {
            "anyOf": [
                reference(name)
                for name in ("Length", "CountFigure", "Ratio", "Angle", "MoneyFigure")
            ]
        },
    },
}

_COUNT = {"count": {"type": "integer", "description": "A number of things, without a unit."}}

_RATIO = {
    "exact": {"type": "string", "description": "A fraction without a unit."},
    "decimal": {"type": "number", "description": "The same, rounded to 6 decimals."},
}

_MONEY = {
    "type": "string",
    "pattern": r"^-?[0-9]+\.[0-9]{2,4}$",
    "description": "Money as text, with its decimals; never a number, which would lose some.",
    "examples": ["1234.50"],
}

_GRID_ID = {
    "type": "string",
    "pattern": "^[0-9a-f]{10}$",
    "description": "Name of the grid, which measured openings must tell: the same for the"
    " same coffers at the same places, whatever goes into them.",
}

_DIGEST = {
    "type": "string",
    "pattern": "^[0-9a-f]{64}$",
    "description": "Hash of all that decides sizes: equal only for equal ceilings.",
}

_MEASURED = {
    "anyOf": [reference("MeasuredOpenings"), {"type": "null"}],
    "description": "Openings as measured, and what follows where they are not square; null"
    " where nothing was measured.",
}

_SOLVER = {"solver": {"type": "string", "description": "What solved the linear programs."}}

_ENGINE = {
    "type": "object",
    "description": "Names and versions of what computed and drew: the bytes of an answer depend on"
    " these and on the request alone.",
    "additionalProperties": {"type": "string"},
    "required": ["lacunar", "cairo", "font"],
    "properties": {
        "lacunar": {"type": "string", "description": "Version of this service."},
        "cairo": {"type": "string", "description": "Version of cairo, or `missing`."},
        "font": {"type": "string", "description": "Digest of the derived typeface."},
    },
}


def answer_schemas() -> dict[str, Json]:
    """The schema of every answer that is JSON, and of what it consists of, by name."""
    records = record_schemas()
    division = _told_in(records.pop("LoneRun"), {})
    cautions = {"cautions": _list("Caution", "Advice about the saw and the figures.")}
    saw = _told_in(records.pop("SawSheet"), cautions)
    boards = _told_in(records.pop("LoneBoards"), {})
    index = records.pop("SetIndex")
    ceilings = _ceilings(records["TakenCeiling"])
    priced = estimate_answer(records.pop("Estimate"), ceilings, _engine())
    materials = _materials(records.pop("MaterialList"), ceilings)
    return {
        **_values(),
        "Engine": _ENGINE,
        **records,
        "Layout": _layout(),
        "Division": division,
        "SawAnswer": saw,
        "SheetIndex": _object(
            index["properties"] | _engine(), None, "The sheets of a set, and what is to be heeded."
        ),
        "Boards": boards,
        "CuttingAnswer": _cutting(),
        "TakeOff": _take_off(ceilings),
        "MaterialListAnswer": materials,
        "Options": options_schema(records.pop("Option"), _engine()),
        "EstimateAnswer": priced,
        "StockList": _object(
            {"sizes": _list("PublishedSize", "The sizes, by list and thickness.")} | _engine(),
            None,
            "Published sizes of stock.",
        ),
    }


def _values() -> dict[str, Json]:
    """What stands for a length, an angle, a count or a number, alone and with its reason."""
    return {
        "Length": {**_object(_LENGTH), "description": "A length, exactly and in decimals."},
        "LengthFigure": _object(
            {**_LENGTH, **_REASON}, list(_LENGTH), "A length that was computed, with its reason."
        ),
        "Angle": {**_object(_ANGLE), "description": "An angle, exactly and in decimals."},
        "AngleFigure": _object(
            {**_ANGLE, **_REASON}, list(_ANGLE), "An angle that was computed, with its reason."
        ),
        "CountFigure": _object(
            {**_COUNT, **_REASON}, list(_COUNT), "A count that was found, with its reason."
        ),
        "NumberFigure": _object(
            {**_RATIO, **_REASON},
            list(_RATIO),
            "A number that was computed, with its reason; its unit stands where it is told.",
        ),
        "Money": _MONEY,
        "MoneyFigure": _object(
            {
                "amount": {**reference("Money"), "description": "The amount [currency]."},
                **_REASON,
            },
            ["amount"],
            "An amount of money that was computed, with its reason.",
        ),
        "Ratio": {**_object(_RATIO), "description": "A number without a unit."},
    }


def _object(properties: Json, required: list[str] | None = None, words: str = "") -> Json:
    told = {"description": words} if words else {}
    needed = list(properties) if required is None else required
    return {"type": "object", **told, "required": needed, "properties": properties}


def _list(name: str, words: str) -> Json:
    return {"type": "array", "items": reference(name), "description": words}


def _engine() -> Json:
    return {"engine": {**reference("Engine"), "description": "What computed the answer."}}


def _layout() -> Json:
    run = {**reference("RunLayout"), "description": "That run, divided."}
    members = {
        "ceiling": {
            **reference("CeilingSpec"),
            "description": "The spec with nothing left open; sent again, it assumes nothing.",
        },
        "outline": _list("Point", "Corners of the room, counter-clockwise from the datum."),
        "runs": {**_object({"length": run, "width": run}), "description": "Both runs."},
        "beams": _list("Beam", "Beams along grid lines."),
        "wall_beams": _list("WallBeam", "Soffits and half or full beams at walls."),
        "coffers": _list("Coffer", "All coffers, by row and column."),
        "grid_id": _GRID_ID,
        "profiles": _list("BeamProfile", "Cross-sections of the beams."),
        "panel": {**_panel(), "description": "What fills the coffers."},
        "sheet_rips": _list(
            "SheetRip", "What sheets give where beams' boards are ripped from them."
        ),
        **_built_on_beams(),
        "crooked": {
            "anyOf": [reference("CrookedRoom"), {"type": "null"}],
            "description": "How the grid lies in a surveyed room; null where it was not surveyed.",
        },
        "followed": {
            "anyOf": [reference("FollowedWalls"), {"type": "null"}],
            "description": "A grid along walls out of square: beams aslant, coffers that taper;"
            " null elsewhere.",
        },
        "outlined": {
            "anyOf": [reference("OutlinedRoom"), {"type": "null"}],
            "description": "A room with other than four walls; null where it has four.",
        },
        "cautions": _list("Caution", "Advice about safety, code or craft."),
        "assumptions": _list("Assumption", "What the spec left open."),
        "digest": _DIGEST,
        **_engine(),
    }
    return _object(members, None, "Everything set out for one ceiling.")


def _built_on_beams() -> Json:
    """What is told of all that beams and coffers are built with, marked, fitted and met by."""
    return {
        "mouldings": {
            **reference("Mouldings"),
            "description": "Crown and flat mouldings, seen openings and mouths.",
        },
        "headroom": _list("Clearance", "Heights under each profile."),
        "heights": {**reference("Heights"), "description": "The stack above the floor."},
        "levels": {
            "anyOf": [reference("Levels"), {"type": "null"}],
            "description": "What stations tell of the ceiling; null where there are none.",
        },
        "backing": {**reference("Backing"), "description": "Joists, backing and weights."},
        "marks": _list("RunMarks", "Running marks of both runs at both ends."),
        "casing_choices": _list("CasingChoice", "What shifting each casing gives."),
        "fitting": {**reference("Fitting"), "description": "The order of fitting."},
        "crossings": _list("Crossing", "Each way in which beams meet or end, and where."),
        "pieces": _list("CutPiece", "The boards that beams are cut from."),
        "ceiling_items": {
            **reference("ItemLayout"),
            "description": "Ceiling items, what they meet, and where they would meet nothing.",
        },
        "wall_features": _list("WallFeatureCheck", "How beams end at wall features."),
        "measured_openings": _MEASURED,
    }


def _cutting() -> Json:
    members = {
        "lengths": {
            "anyOf": [reference("LengthPlans"), {"type": "null"}],
            "description": "The plans of pieces; null where none were asked for.",
        },
        "sheets": {
            "anyOf": [reference("SheetPlans"), {"type": "null"}],
            "description": "The plans of panels; null where none were asked for.",
        },
    }
    words = "How pieces are cut from stock."
    told = _told_in({"properties": members, "description": words}, {})
    return {
        **told,
        "required": [*told["required"], *_SOLVER],
        "properties": told["properties"] | _SOLVER,
    }


def _panel() -> Json:
    members = {
        "kind": {
            "type": "string",
            "enum": list(PanelKind),
            "description": "What fills the coffers.",
        },
        "pieces": _list("PanelFit", "Each size of panel, with the coffers it fills."),
        "boards": {
            "anyOf": [reference("BoardLayout"), {"type": "null"}],
            "description": "All boards; null where coffers are filled otherwise.",
        },
    }
    return _object(members)


def _told_in(record: Json, more: Json) -> Json:
    """A record as an answer by itself: with what it is told in, and what was assumed for it."""
    told = {
        "units": {
            "type": "string",
            "enum": list(Units),
            "description": "The units texts and exact values are told in.",
        },
        "mark_to": {
            "type": "string",
            "enum": [step.text for step in STEPS],
            "description": "The step marks are rounded to.",
        },
    }
    assumed = {"assumptions": _list("Assumption", "What the query left open.")}
    return _object(
        {**told, **record["properties"], **more, **assumed, **_engine()},
        None,
        record["description"],
    )


def _ceilings(ceiling: Json) -> Json:
    """The ceilings of a take-off with what they were taken off by."""
    each = _object(
        {
            **ceiling["properties"],
            "digest": _DIGEST,
            "take_off": {
                **reference("TakeOffSpec"),
                "description": "What it was taken off by, with nothing left open.",
            },
            "assumptions": _list("Assumption", "What its spec left open."),
        },
        None,
        ceiling["description"],
    )
    return {
        "type": "array",
        "items": each,
        "description": "The ceilings, in the order in which they were sent.",
    }


def _materials(record: Json, ceilings: Json) -> Json:
    """A material list with the ceilings it is for."""
    told = _told_in(record, {})
    more = {"ceilings": ceilings, **_SOLVER}
    return {
        **told,
        "required": [*told["required"], *more],
        "properties": told["properties"] | more,
    }


def _take_off(ceilings: Json) -> Json:
    """A take-off: its ceilings, and what they are made of."""
    return _object(
        {
            "units": {
                "type": "string",
                "enum": list(Units),
                "description": "The units texts and exact values are told in.",
            },
            "ceilings": ceilings,
            "parts": _list("Part", "Every part, under a mark that all ceilings share."),
            "quantities": _list("Quantity", "What is needed of everything, waste apart."),
            "cautions": _list("Caution", "Advice about parts, and what is not counted."),
            **_engine(),
        },
        None,
        "What one ceiling or several are made of.",
    )
