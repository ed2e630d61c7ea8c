"""What is used up: lengths of stock, areas of sheets, fasteners, adhesive, insulation, paint.

Each is told as what is needed by a stated rule, with waste apart from it, and is never rounded up
to what is sold. How many sticks and sheets are bought follows from how parts are laid out in them.
"""
