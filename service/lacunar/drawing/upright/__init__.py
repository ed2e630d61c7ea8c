"""What all upright views have: what a plane across the room cuts, and what is seen beyond it.

A cut is told in lengths of the room, along the plane from left to right and up from the finished
floor; only `UprightPaper` knows where that lies on paper. Sections and elevations draw the same.
"""
