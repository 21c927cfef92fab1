"""The desk: the whole job in a browser, on one laptop or shared by a team."""
