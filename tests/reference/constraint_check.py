#!/usr/bin/env python3
"""Check the reference tables of steered front axles by a general geometric constraint solver.

Every case is drawn as points under distances, planes and lines, and closed by the constraint solver of
``constraint_solver``; see README.md here. It shares nothing with ``general_solver`` but the case files and the meaning
of the figures.

Examples::

    python3 tests/reference/constraint_check.py --check tests/reference/tables
    python3 tests/reference/constraint_check.py --cases tests/reference/independent --check tests/reference/independent

Exit status: 0 when everything agrees, 1 on a difference, 2 on a wrong option or an unusable case.
"""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path
from typing import Any

from constraint_solver.comparison import compare_case, lines
from constraint_solver.continuation import OutOfReach
from constraint_solver.sketch import NotClosed

HERE = Path(__file__).resolve().parent
RESULT = "expected"
"""Key of a table file that holds the computed figures; all other keys repeat the case."""


def read(path: Path) -> Any:
    """A JSON file."""
    return json.loads(path.read_text(encoding="utf-8"))


def check(case_file: Path, table_file: Path, tolerance: float) -> bool:
    """Holds one table against its case; prints what came of it and returns whether they agree."""
    if not table_file.exists():
        print(f"{case_file.name}: no table of that name in {table_file.parent}")
        return False
    report = compare_case(read(case_file), read(table_file)[RESULT], tolerance)
    first, *rest = lines(report)
    print(f"{case_file.name}: {first}")
    for line in rest:
        print(line)
    return not report.troubles


def parse_options(arguments: list[str] | None = None) -> argparse.Namespace:
    """The command line."""
    parser = argparse.ArgumentParser(description="Check the reference tables by a geometric constraint solver.")
    parser.add_argument(
        "--check", default=HERE / "tables", type=Path, metavar="DIR", help="folder of the tables (default: tables/)"
    )
    parser.add_argument(
        "--cases", default=HERE / "cases", type=Path, metavar="DIR", help="folder of case files (default: cases/)"
    )
    parser.add_argument(
        "--only", action="append", metavar="NAME", help="take only this case (file name without .json); may be repeated"
    )
    parser.add_argument(
        "--tolerance", default=1e-8, type=float, help="largest difference in mm or degrees (default: 1e-8)"
    )
    return parser.parse_args(arguments)


def main() -> int:
    """Run the command line; returns the exit status."""
    options = parse_options()
    case_files = sorted(options.cases.glob("*.json"))
    if options.only:
        case_files = [path for path in case_files if path.stem in options.only]
    if not case_files:
        print(f"no case files in {options.cases}", file=sys.stderr)
        return 2
    agree = True
    for case_file in case_files:
        try:
            agree &= check(case_file, options.check / case_file.name, options.tolerance)
        except (ValueError, KeyError, NotClosed, OutOfReach) as failure:
            print(f"{case_file.name} could not be solved: {type(failure).__name__}: {failure}", file=sys.stderr)
            return 2
    return 0 if agree else 1


if __name__ == "__main__":
    sys.exit(main())
