"""The small pictures of the sewing order, each of one manner: a part of a piece, a cut through a fold, the whole skirt.

Black is what is there, the accent is what is done now; white is the right side of the cloth, the tint its wrong side.
"""
