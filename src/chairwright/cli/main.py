"""The ``chairwright`` command: one table of subcommands, each imported only when it is used."""

from __future__ import annotations

import argparse
import io
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from importlib import import_module

from chairwright import __version__
from chairwright.cli.report import run_quietly


@dataclass(frozen=True)
class Command:
    """One subcommand.

    Parameters
    ----------
    name : str
        As typed.
    module : str
        Holds ``add_arguments(parser)`` and ``run(args) -> int``.
    summary : str
        One line for the list of commands.
    """

    name: str
    module: str
    summary: str


COMMANDS = (
    Command("fit", "chairwright.cli.fit", "find the best set-up on one line or several, and why"),
    Command("figures", "chairwright.cli.figures", "show every figure of one set-up"),
    Command("sweep", "chairwright.cli.sweep", "show what one choice does to a set-up"),
    Command("compare", "chairwright.cli.compare", "show two to four set-ups side by side"),
    Command("places", "chairwright.cli.places", "judge a set-up by the client's places"),
    Command("tolerance", "chairwright.cli.tolerance", "say how sure the figures are, and why"),
    Command("scales", "chairwright.cli.scales", "find the centre of mass from scales under wheels"),
    Command("refit", "chairwright.cli.refit", "fit a chair again: the smallest changes"),
    Command("growth", "chairwright.cli.growth", "plan for growth: what lasts, the next review"),
    Command("measured", "chairwright.cli.measured", "judge a chair as measured, of any maker"),
    Command("order", "chairwright.cli.order", "order a set-up: parts, prices, delivery"),
    Command("adjust", "chairwright.cli.adjust", "adjust a chair from one set-up to another"),
    Command("payer", "chairwright.cli.payer", "find the payer's class of a set-up and its codes"),
    Command("papers", "chairwright.cli.papers", "write the papers of an order as PDF"),
    Command("export", "chairwright.cli.export", "write an order for other programs"),
    Command("import", "chairwright.cli.import_measures", "take measures from a health record"),
    Command("line", "chairwright.cli.line", "check a line, count it, print its seat heights"),
    Command("person", "chairwright.cli.person", "show a client's measures, checked and completed"),
    Command("desk", "chairwright.cli.desk", "open the whole job in a browser, on this machine"),
    Command("demo", "chairwright.cli.demo", "fit every example client and write their sheets"),
)
EPILOG = "'chairwright COMMAND --help' explains a command. Exit code 2: the input needs a look."


def build_parser(command: str | None) -> argparse.ArgumentParser:
    """Build the parser with the arguments of one subcommand.

    Parameters
    ----------
    command : str or None
        The subcommand to import; the others are listed by name and summary only.

    Returns
    -------
    argparse.ArgumentParser
    """
    parser = argparse.ArgumentParser(
        prog="chairwright",
        description="From a client's measurements to one proven manual wheelchair set-up.",
        epilog=EPILOG,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"chairwright {__version__}")
    subparsers = parser.add_subparsers(metavar="COMMAND", required=True, dest="command")
    for each in COMMANDS:
        sub = subparsers.add_parser(each.name, help=each.summary, allow_abbrev=False)
        if each.name == command:
            module = import_module(each.module)
            sub.description = module.__doc__
            module.add_arguments(sub)
            sub.set_defaults(run=module.run)
    return parser


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line.

    Parameters
    ----------
    arguments : sequence of str, optional
        Without the program's name; by default those of the process.

    Returns
    -------
    int
        Exit code; see `chairwright.cli.report.run_quietly`.
    """
    arguments = sys.argv[1:] if arguments is None else list(arguments)
    return run_quietly(lambda: _run(arguments))


def _run(arguments: Sequence[str]) -> int:
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
    names = {each.name for each in COMMANDS}
    typed = next((word for word in arguments if word in names), None)
    args = build_parser(typed).parse_args(arguments)
    code: int = args.run(args)
    return code


if __name__ == "__main__":
    sys.exit(main())
