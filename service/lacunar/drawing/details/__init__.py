"""What views at a large scale share: words at leaders beside them, and lines where they break off.

Places on paper come in, elements come out. Nothing here may know what a view is of.
"""
