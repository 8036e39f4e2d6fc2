"""The worktable: forms, board and numbers, in Qt, and only here."""
