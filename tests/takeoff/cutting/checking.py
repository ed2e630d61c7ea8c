"""Checks plans and certificates from nothing but what they say, in plain Python.

The knapsack here is written anew, piece by piece, so that it shares nothing with the tables that
the certificates come from.
"""

from fractions import Fraction


def most_value(sizes, values, quantities, capacity):
    """The greatest value of pieces that fit a capacity, each kind as often as it is wanted."""
    best = [0] * (capacity + 1)
    for size, value, quantity in zip(sizes, values, quantities, strict=True):
        for _ in range(min(quantity, capacity // size)):
            changed = False
            for room in range(capacity, size - 1, -1):
                if best[room - size] + value > best[room]:
                    best[room] = best[room - size] + value
                    changed = True
            if not changed:
                break
    return best[capacity]


def proven_bound(certificate):
    """The bound that a certificate proves, worked out anew; raises AssertionError if it lies."""
    sizes = [piece.size for piece in certificate.pieces]
    values = [piece.value for piece in certificate.pieces]
    quantities = [piece.quantity for piece in certificate.pieces]
    factor = Fraction(certificate.factor)
    bound = factor * sum(v * n for v, n in zip(values, quantities, strict=True))
    for stock in certificate.stock:
        held = most_value(sizes, values, quantities, stock.capacity)
        assert held == stock.holds, stock
        above = max(Fraction(0), factor * held - stock.price)
        if stock.supply is None:
            assert above == 0, stock
        else:
            bound -= above * stock.supply
    assert bound == Fraction(certificate.proves)
    assert bound <= certificate.rounded_up
    return bound


def sums_of(prices, most):
    """Every total of prices up to `most`."""
    reached = {0}
    frontier = [0]
    while frontier:
        total = frontier.pop()
        for price in prices:
            if price and total + price <= most and total + price not in reached:
                reached.add(total + price)
                frontier.append(total + price)
    return reached


def cents(text):
    """Money as whole cents."""
    return int(Fraction(text) * 100)
