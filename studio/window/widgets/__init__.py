"""The few widgets the worktable needs of its own; none of them knows a draft."""
