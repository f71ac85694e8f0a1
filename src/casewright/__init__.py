"""Casewright: from a tape measure in a crooked room to cabinets that fit."""
