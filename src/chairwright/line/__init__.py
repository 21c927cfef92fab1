"""line"""
