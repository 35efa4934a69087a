"""Tests of paper foundations: against brute force, an independent replay, and counts derived by hand."""
