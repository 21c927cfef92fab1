"""figures"""
