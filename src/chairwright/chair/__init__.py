"""chair"""
