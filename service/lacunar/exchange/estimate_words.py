"""What every field of an estimate means, with its unit, by record and field."""

from collections.abc import Mapping

_SOURCE = (
    "What is behind it: part marks; of crossings their ids and of splices their beams, with the"
    " number of the ceiling where there are several; of coffers the numbers of ceilings."
)

ESTIMATE_WORDS: Mapping[str, Mapping[str, str]] = {
    "EstimateLine": {
        "section": "What is paid for.",
        "name": "What it is called: of materials as the material list names them.",
        "per": "What quantity counts, and the price is for.",
        "quantity": "How much there is of it [number of per].",
        "hours": "How long it takes [hours]; null where it is not told in hours.",
        "price": "What one costs, or an hour where hours are told [currency].",
        "amount": "What it comes to [currency].",
        "taxed": "Whether tax is worked out on it.",
        "source": _SOURCE,
        "priced_at": "The place of its price in the price list; /stock where the stock has it.",
    },
    "Unpriced": {
        "section": "What would be paid for.",
        "name": "What it is called.",
        "reason": "no_price: none is given; not_told_so: it is priced by a measure it is not told"
        " in; size_not_priced: others are, this size is not.",
        "per": "What its price is for, or could be where there is none.",
        "quantity": "How much there is of it [number of per]; null where it is not told so.",
        "source": _SOURCE,
    },
    "LaborCount": {
        "per": "What is counted.",
        "of": "Of which kind; null of coffers.",
        "count": "How much there is [number of per].",
        "source": _SOURCE,
    },
    "Totals": {
        "materials": "All lines of materials [currency].",
        "labor": "All lines of labor [currency].",
        "others": "All other lines [currency].",
        "direct": "All lines [currency].",
        "overhead": "Its share of direct cost [currency].",
        "contingency": "Its share of direct cost and overhead [currency].",
        "cost": "Direct cost, overhead and contingency [currency].",
        "selling_price": "Cost with markup, or over what margin leaves [currency].",
        "profit": "What the selling price is above cost [currency].",
        "taxable": "What tax is a share of [currency].",
        "tax": "Tax [currency].",
        "total": "Selling price and tax [currency].",
        "hours": "Hours of all lines that are told in hours [hours].",
        "complete": "Whether everything has a price and was taken off; if not, the total is less"
        " than it will be.",
    },
    "Estimate": {
        "currency": "Currency of all amounts, by its ISO 4217 code.",
        "lines": "What is paid for, in the order of the material list and the price list.",
        "unpriced": "What no price was found for; nothing is ever priced by a default.",
        "counts": "All that labor can be paid by, whether or not it is.",
        "totals": "From the lines to the total.",
        "not_counted": "Codes of cautions about what is built and not in the take-off, so that the"
        " total is incomplete.",
        "unused_prices": "Places in the price list of prices that nothing was priced by.",
        "cautions": "Advice, and what is built and not counted.",
    },
    "LineDifference": {
        "section": "What is paid for.",
        "name": "What the line is called.",
        "base": "What it comes to as asked for [currency]; null where there is no such line.",
        "alternate": "What it comes to in the alternate [currency]; null where there is none.",
        "difference": "By how much the alternate is more; below zero, less [currency].",
    },
    "Comparison": {
        "lines": "Lines that differ; their differences add up to that of direct cost.",
        "direct": "By how much direct cost is more; below zero, less [currency].",
        "selling_price": "By how much the selling price is more [currency].",
        "total": "By how much the total is more [currency].",
        "hours": "By how many hours it is more [hours].",
        "comparable": "Whether both are complete.",
    },
}
