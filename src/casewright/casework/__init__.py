"""Specs in, model out: cases, fronts, parts, joints, features, placements."""
