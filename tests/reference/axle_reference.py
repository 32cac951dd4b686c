#!/usr/bin/env python3
"""Write or check the reference tables of steered front axles.

Every case file is solved from scratch by the general rigid-body solver in ``general_solver``; see README.md here.

Examples::

    python3 tests/reference/axle_reference.py --check tests/reference/tables
    python3 tests/reference/axle_reference.py --write
    python3 tests/reference/axle_reference.py --cases tests/reference/independent \\
        --check tests/reference/independent --tolerance 1e-6

Exit status: 0 when everything agrees or was written, 1 on a difference, 2 on a wrong option or an unusable case.
"""

from __future__ import annotations

import argparse
import json
import os
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

# The matrices are small: one thread is fastest, and makes the last digits repeatable. Must precede numpy.
for _variable in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_variable, "1")

import numpy as np  # noqa: E402

from general_solver.continuation import BranchTurnsBack, NotClosed  # noqa: E402
from general_solver.tables import reference_table  # noqa: E402

HERE = Path(__file__).resolve().parent
DECIMALS = 10
RESULT = "expected"
"""Key of a table file that holds the computed figures; all other keys repeat the case."""


def plain(value: Any) -> Any:
    """Numbers of any numpy kind as rounded Python numbers, arrays as lists; no negative zero."""
    if isinstance(value, dict):
        return {key: plain(item) for key, item in value.items()}
    if isinstance(value, (list, tuple, np.ndarray)):
        return [plain(item) for item in value]
    if isinstance(value, (float, np.floating)):
        if not np.isfinite(value):
            raise ValueError("a figure is not a finite number")
        return round(float(value), DECIMALS) + 0.0
    return value


def to_text(table: Any) -> str:
    """JSON with one key a line and short lists of numbers kept on one line."""
    text = json.dumps(table, indent=1, allow_nan=False)
    short = re.sub(r"\[\s+([-+.\deE,\s]+?)\s+\]", lambda found: "[" + " ".join(found[1].split()) + "]", text)
    return short + "\n"


def solved(case_file: Path) -> Any:
    """A case with its computed figures under ``expected``; figures already in the file are not read."""
    case = json.loads(case_file.read_text(encoding="utf-8"))
    inputs = {key: value for key, value in case.items() if key != RESULT}
    return inputs | {RESULT: plain(reference_table(inputs))}


def differences(fresh: Any, kept: Any, tolerance: float, place: str = "") -> Iterator[str]:
    """Every place where two tables differ; numbers by more than ``tolerance * max(1, |kept|)``."""
    if isinstance(fresh, dict) and isinstance(kept, dict):
        for key in sorted(fresh.keys() | kept.keys()):
            if key not in fresh or key not in kept:
                yield f"{place}.{key}: only in the {'checked-in' if key in kept else 'computed'} table"
            else:
                yield from differences(fresh[key], kept[key], tolerance, f"{place}.{key}")
    elif isinstance(fresh, list) and isinstance(kept, list) and len(fresh) == len(kept):
        for index, (new, old) in enumerate(zip(fresh, kept)):
            yield from differences(new, old, tolerance, f"{place}[{index}]")
    elif _is_number(fresh) and _is_number(kept):
        if not abs(fresh - kept) <= tolerance * max(1.0, abs(kept)):
            yield f"{place}: computed {fresh!r}, checked in {kept!r}"
    elif fresh != kept:
        yield f"{place}: computed {fresh!r}, checked in {kept!r}"


def largest_difference(fresh: Any, kept: Any) -> float:
    """Largest difference of any two numbers at the same place, absolute below 1 and relative above."""
    if isinstance(fresh, dict) and isinstance(kept, dict):
        return max((largest_difference(fresh[key], kept[key]) for key in fresh.keys() & kept.keys()), default=0.0)
    if isinstance(fresh, list) and isinstance(kept, list):
        return max((largest_difference(new, old) for new, old in zip(fresh, kept)), default=0.0)
    if _is_number(fresh) and _is_number(kept):
        return float(abs(fresh - kept) / max(1.0, abs(kept)))
    return 0.0


def _is_number(value: Any) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def check(case_files: list[Path], folder: Path, tolerance: float) -> bool:
    """Compare computed tables with those of a folder; prints what differs and returns whether all agree."""
    agree = True
    for case_file in case_files:
        kept_file = folder / case_file.name
        if not kept_file.exists():
            print(f"{case_file.name}: no table of that name in {folder}")
            agree = False
            continue
        fresh, kept = solved(case_file), json.loads(kept_file.read_text(encoding="utf-8"))
        found = list(differences(fresh, kept, tolerance))
        largest = largest_difference(fresh, kept)
        print(f"{case_file.name}: largest difference {largest:.1e}, {len(found)} beyond tolerance")
        for line in found[:20]:
            print(f"    {line}")
        agree &= not found
    return agree


def tables_without_case(cases: Path, folder: Path) -> list[str]:
    """Names of tables whose case file is gone."""
    known = {path.name for path in cases.glob("*.json")}
    return sorted(path.name for path in folder.glob("*.json") if path.name not in known)


def write(case_files: list[Path], folder: Path) -> None:
    """Compute every case and write its table."""
    folder.mkdir(parents=True, exist_ok=True)
    for case_file in case_files:
        (folder / case_file.name).write_text(to_text(solved(case_file)), encoding="utf-8")
        print(f"{case_file.name}: written")


def parse_options(arguments: list[str] | None = None) -> argparse.Namespace:
    """The command line."""
    parser = argparse.ArgumentParser(description="Write or check the reference tables of steered front axles.")
    action = parser.add_mutually_exclusive_group(required=True)
    for name, verb in (("--check", "compare with the tables in DIR"), ("--write", "write the tables into DIR")):
        action.add_argument(
            name, nargs="?", const=HERE / "tables", type=Path, metavar="DIR", help=f"{verb} (default: tables/)"
        )
    parser.add_argument(
        "--cases", type=Path, default=HERE / "cases", metavar="DIR", help="folder of case files (default: cases/)"
    )
    parser.add_argument(
        "--only", action="append", metavar="NAME", help="take only this case (file name without .json); may be repeated"
    )
    parser.add_argument(
        "--tolerance",
        type=float,
        default=1e-7,
        help="largest difference in mm, deg or percentage points; relative for numbers above 1 (default: 1e-7)",
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
    try:
        if options.write is not None:
            write(case_files, options.write)
            return 0
        agree = check(case_files, options.check, options.tolerance)
    except (ValueError, KeyError, NotClosed, BranchTurnsBack) as failure:
        print(f"a case could not be solved: {type(failure).__name__}: {failure}", file=sys.stderr)
        return 2
    stray = tables_without_case(options.cases, options.check)
    for name in stray:
        print(f"{name}: a table without a case")
    return 0 if agree and not stray else 1


if __name__ == "__main__":
    sys.exit(main())
