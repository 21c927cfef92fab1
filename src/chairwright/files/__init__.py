"""files"""
