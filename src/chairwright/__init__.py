"""chairwright: from a client's measurements to one proven, buildable wheelchair set-up."""

__version__ = "0.1.0"
