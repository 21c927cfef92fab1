"""The places of daily life: whether, and how, an occupied chair gets through and round them."""
