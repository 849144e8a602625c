"""``python -m generator`` is the same as ``tuckwright``."""

from generator.cli import main

if __name__ == "__main__":
    main()
