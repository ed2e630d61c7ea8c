"""What all plans of a room have: places on paper, walls, the datum, the control line.

A view lays its own things over these; views do not know each other.
"""
