"""Where a client lives and goes: doors, ramps, tables, beds, the car, and who helps."""
