"""Papers of one order: one module and one template for each paper."""
