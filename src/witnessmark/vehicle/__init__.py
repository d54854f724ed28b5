"""Parts, joints, the catalogue of kinds, and starting lists."""
