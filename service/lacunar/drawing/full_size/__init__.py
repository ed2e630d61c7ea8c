"""What is drawn at full size to be cut out: how it is parted, put together again, and numbered.

One unit of paper is a millimeter of the room. A strip lies along the page; where it is longer than
the page it comes in pieces, each of which starts at a round distance that is printed on it.
"""
