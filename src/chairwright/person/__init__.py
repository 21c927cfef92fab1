"""person"""
