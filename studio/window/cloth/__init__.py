"""The cloth as the window paints it: its print, alone or under the pieces."""
