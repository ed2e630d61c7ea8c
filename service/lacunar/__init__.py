"""Lays out coffered ceilings exactly and plots their shop drawings.

A spec enters as JSON and passes through the folders in this order; each imports only from those
before it: measure, model, layout, drawing, exchange, workflow, cli.
"""

__version__ = "0.1.0"
