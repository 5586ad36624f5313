"""The app: commands, and errors as one line with an exit status."""

from __future__ import annotations

import os
import sys

import typer

from dictate.cli import batch, export, listen, note, records, review, signing, upkeep
from dictate.errors import DictateError, GrammarError

FAULT = 1
STOPPED = 130

app = typer.Typer(
    name="dictate",
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
        app()
        sys.stdout.flush()
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


def _fail(message: str) -> None:
    print(f"dictate: {message}", file=sys.stderr)
    sys.exit(FAULT)


def _silence_stdout() -> None:
    """Keep the interpreter from writing the rest at exit and failing again."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


if __name__ == "__main__":
    main()
