"""What a program may ask of the desk: the same records under the same rules as the pages."""
