"""Words that every file has to survive."""

HOSTILE = "a\x00b\x07 \ud800 </text><script>alert(1)</script> 🧵 שלום %%d ^I \U0001f1ec\U0001f1e7"
"""Words as nobody types them."""
