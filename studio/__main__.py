"""`skirtwright` and `python -m studio`: a window, or one of the commands."""

import os
import sys
from collections.abc import Sequence
from pathlib import Path

from studio.parser import COMMANDS, COMMANDS_HELP, Parser
from studio.trouble import Trouble, shown


def main(argv: Sequence[str] | None = None) -> int:
    """Run a command; 0 when done, 1 when findings stop it, 2 for input that cannot be used."""
    said = list(sys.argv[1:] if argv is None else argv)
    try:
        return _command(said) if said and said[0] in COMMANDS else _window(said)
    except Trouble as trouble:
        print(f"skirtwright: {trouble}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:  # whoever was reading has read enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except OSError as fault:
        print(f"skirtwright: The output cannot be written ({fault.strerror}).", file=sys.stderr)
        return 2
    except Exception as fault:  # a fault of ours is one line for the maker too
        says = shown(f"{type(fault).__name__}: {fault}", 200)
        print(f"skirtwright: Something went wrong here ({says}).", file=sys.stderr)
        return 2


def _command(said: list[str]) -> int:
    from studio import commands  # what drafts is not needed to show a window

    done = commands.RUN[said[0]](said[1:])
    if sys.stdout:  # there is none where output was closed before the start
        sys.stdout.flush()
    return done


def _window(said: list[str]) -> int:
    parser = Parser("skirtwright", description="A drafting studio for skirts made to measure.", epilog=COMMANDS_HELP)
    parser.add_argument("file", nargs="?", type=Path, metavar="FILE", help="a .skirt file to open")
    parser.add_argument("--version", action="store_true", help="say which version this is")
    chosen = parser.read(said)
    if chosen.version:
        from importlib.metadata import version  # 18 ms the window need not wait for

        print(f"skirtwright {version('skirtwright')}")
        return 0
    if chosen.file and not chosen.file.suffix and not chosen.file.exists():
        raise Trouble(f"“{shown(str(chosen.file))}” is neither a command nor a file. {COMMANDS_HELP}")
    from studio.window import run  # Qt only where a window is wanted

    return run(chosen.file)


if __name__ == "__main__":
    sys.exit(main())
