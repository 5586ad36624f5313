"""The app: commands, and errors as one line with an exit status."""

from __future__ import annotations

import os
import re
import sys

import typer

from dictate.cli import batch, export, listen, note, records, review, signing, upkeep
from dictate.errors import DictateError, GrammarError

FAULT = 1
STOPPED = 130
PROGRAM = "dictate"
WRONG_USAGE: type[Exception] = typer.BadParameter.__mro__[2]  # click's, or that of the copy that newer typers carry
PARSERS_WORDS = (  # of the library that reads the command line, and ours
    (r"^Invalid value(?: for)?:? ?['\"]?(?=\S)", ""),
    (r"^(--[\w-]+|\[?[A-Z.]+\]?)['\"]: ", r"\1: "),
    (r": (?:Value error, |Input )", ": "),
)

app = typer.Typer(
    name=PROGRAM,
    no_args_is_help=True,
    add_completion=False,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    help="A spoken neurological examination becomes a checked note, on your own machine. "
    "Supports licensed practice: it writes down what was dictated and makes no diagnosis.",
)
app.command("note")(note.note)
app.command("listen")(listen.listen)
app.command("batch")(batch.batch)
app.command("review")(review.review)
app.command("sign")(signing.sign)
app.command("amend")(signing.amend)
app.command("withdraw")(signing.withdraw)
kept = typer.Typer(invoke_without_command=True, rich_markup_mode=None)
kept.callback()(records.find)
kept.command("verify")(records.verify)
kept.command("move")(records.move)
kept.command("erase")(records.erase)
app.add_typer(kept, name="records")
app.command("export")(export.export)
app.command("compare")(export.compare)
app.command("doctor")(upkeep.doctor)
grammar = typer.Typer(no_args_is_help=True, rich_markup_mode=None, help="The trade's words, in files you can extend.")
grammar.command("check")(upkeep.check)
app.add_typer(grammar, name="grammar")


def main() -> None:
    """Run the program; the user's and the machine's faults become one line and exit status 1."""
    try:
        status = app(prog_name=PROGRAM, standalone_mode=False)
        sys.stdout.flush()
        if status == STOPPED:
            print("stopped", file=sys.stderr)
        sys.exit(status or 0)
    except WRONG_USAGE as error:
        print(wrong_usage(error), file=sys.stderr)
        sys.exit(getattr(error, "exit_code", FAULT))
    except GrammarError as error:  # already `file:line: what is wrong`, one line per fault
        print(error, file=sys.stderr)
        sys.exit(FAULT)
    except DictateError as error:
        _fail(str(error))
    except BrokenPipeError:
        _silence_stdout()
        sys.exit(FAULT)
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        if error.filename is not None:
            _fail(f"{os.fsdecode(error.filename)}: cannot be used: {reason}: check its permissions")
        _silence_stdout()
        _fail(f"standard output: cannot be written: {reason}: make room")
    except KeyboardInterrupt:
        print("stopped", file=sys.stderr)
        sys.exit(STOPPED)


def wrong_usage(error: Exception) -> str:
    """What is wrong with the command line, in one line; the help itself where nothing was asked for."""
    said = str(error.format_message()) if hasattr(error, "format_message") else str(error)
    context = getattr(error, "ctx", None)
    command = context.command_path if context else PROGRAM
    if type(error).__name__ == "NoArgsIsHelpError":
        return said
    line = "".join(letter for letter in " ".join(said.split()) if letter.isprintable()).removesuffix(".")
    for known, instead in PARSERS_WORDS:
        line = re.sub(known, instead, line)
    return f"{command}: {line[:1].lower()}{line[1:]}: see `{command} --help`"


def _fail(message: str) -> None:
    print(f"dictate: {message}", file=sys.stderr)
    sys.exit(FAULT)


def _silence_stdout() -> None:
    """Keep the interpreter from writing the rest at exit and failing again."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


if __name__ == "__main__":
    main()
