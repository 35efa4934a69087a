"""Tests of the door to plugins, with well-behaved and broken strangers."""
