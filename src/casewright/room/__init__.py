"""`build(spec, facts)`: cases and runs of a whole job joined into one model."""
