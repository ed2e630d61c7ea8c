"""A beam cut across, below any view that shows it: where its boards and mouldings lie, exactly.

A profile comes in with what meets it; outlines go out in lengths, from the beam's face and from the
ceiling. How they are drawn, dimensioned and named is a matter of each view.
"""
