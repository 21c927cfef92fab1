"""The client: measures, estimates, plausibility, body segments, seated posture."""
