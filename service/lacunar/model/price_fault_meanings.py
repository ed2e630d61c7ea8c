"""What the faults of price lists and estimates mean."""

from lacunar.model.fault_meaning import FaultMeaning

PRICE_FAULTS = {
    "currency_not_readable": FaultMeaning(
        "Currency not readable",
        "The currency is not named by three capital letters.",
        "Write its ISO 4217 code, such as USD or EUR.",
    ),
    "share_out_of_bounds": FaultMeaning(
        "Share out of bounds",
        "A share of cost, price or time is negative or too large; mostly it is a percentage.",
        "Write a share, such as 0.1 for ten percent.",
    ),
    "markup_and_margin": FaultMeaning(
        "Markup and margin",
        "Both a markup, which is a share of cost, and a margin, a share of the price, are given.",
        "Leave one of them out.",
    ),
    "price_of_nothing": FaultMeaning(
        "Price of nothing",
        "A price says neither by a name nor by a kind what it is of.",
        "Give a name as the take-off tells it, or a kind of material.",
    ),
    "length_without_size": FaultMeaning(
        "Length where none matters",
        "A price tells a length, and is by a measure that holds for every length.",
        "Leave the length out, or price it by the piece or sheet.",
    ),
    "priced_twice": FaultMeaning(
        "Priced twice",
        "Two prices are of the same thing in the same size, or by different measures.",
        "Keep one of them.",
    ),
    "labor_not_priced": FaultMeaning(
        "Labor priced not at all, or twice",
        "Work needs either a price for one, or the hours one takes and a rate by the hour.",
        "Give one of the two.",
    ),
    "quantity_not_fitting": FaultMeaning(
        "Quantity missing or counted",
        "A quantity is given where it is counted, or is missing where nothing is counted.",
        "Give it for what goes by the hour or by each, and for nothing else.",
    ),
    "amount_out_of_bounds": FaultMeaning(
        "Amount out of bounds",
        "A number of hours or of things is negative, or too large for any job.",
        "Check the figure.",
    ),
    "work_not_counted": FaultMeaning(
        "Work not counted",
        "Work is paid by something that does not count what is named.",
        "Name parts by the foot and piece, joints by the joint, settings of a saw by the set-up.",
    ),
    "ceiling_and_ceilings": FaultMeaning(
        "One ceiling and a list",
        "Both one ceiling and a list of ceilings are sent.",
        "Put all of them into the list.",
    ),
    "alternate_misfit": FaultMeaning(
        "Alternate not readable",
        "With an alternate's changes, its ceiling or its prices no longer fit.",
        "Mend the changes; the figures tell which fault it would be in a document by itself.",
    ),
}
