"""Every figure of a set-up, one file a subject, and the registry that names them."""
