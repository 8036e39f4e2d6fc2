"""The lay plan: how outlines are laid on a strip of cloth so that it takes as little length as can be found.

It knows polygons and numbers only. `problem` says what is to be laid, `rows` lays it at once, `improve` finds shorter
plans, and `planning` does so beside the window, in a process of its own.
"""
