"""Each app's pages with what the standing checks need to open them: one module an app."""
