"""How parts, joints, coats and stock stand, computed from the facts."""
