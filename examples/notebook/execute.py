"""Executes agreement.ipynb with its TypeScript kernel.

Without an argument the new outputs are written into the notebook. With --check nothing is written: the outputs are
held to those that stand in it, and every cell that gives others is named.

Each message of the kernel is put to the cell that it belongs to, whenever it arrives: on a busy machine a message can
come after the kernel has said that the cell is done, and a runner that has gone on by then loses it.
"""

import difflib
import json
import queue
import sys
import time

import nbformat
from jupyter_client.kernelspec import NoSuchKernel
from jupyter_client.manager import KernelManager

NOTEBOOK = "agreement.ipynb"
START_SECONDS = 120
CELL_SECONDS = 120
# So long the kernel must have been silent after a cell before the next one starts, and at the end.
QUIET_SECONDS = 0.3
QUIET_AT_THE_END_SECONDS = 3
OUTPUTS = ("stream", "display_data", "execute_result", "error")


class Runner:
    def __init__(self, client):
        self.client = client
        self.outputs = {}
        self.done = set()

    def read(self, seconds):
        """Takes one message, if one comes in time, and puts it to its cell."""
        try:
            message = self.client.get_iopub_msg(timeout=seconds)
        except queue.Empty:
            return False
        cell = message["parent_header"].get("msg_id")
        kind = message["msg_type"]
        if kind == "status" and message["content"]["execution_state"] == "idle":
            self.done.add(cell)
        elif kind in OUTPUTS:
            self.outputs.setdefault(cell, []).append(nbformat.v4.output_from_msg(message))
        return True

    def wait(self, cell, seconds):
        """Whether the kernel says in time that it is done with a cell."""
        until = time.monotonic() + seconds
        while cell not in self.done and time.monotonic() < until:
            self.read(min(1, max(0.01, until - time.monotonic())))
        return cell in self.done

    def settle(self, seconds):
        while self.read(seconds):
            pass

    def listen(self):
        """Asks for nothing until the kernel is heard to answer: what is said before that is lost."""
        until = time.monotonic() + START_SECONDS
        while time.monotonic() < until:
            if self.wait(self.client.execute("", silent=True, store_history=False), 5):
                return self.settle(QUIET_SECONDS)
        sys.exit(f"The kernel does not answer within {START_SECONDS} s.")


def merged(outputs):
    """What was printed in pieces is one output."""
    whole = []
    for output in outputs:
        last = whole[-1] if whole else None
        if last and output.output_type == last.output_type == "stream" and output.name == last.name:
            last.text += output.text
        else:
            whole.append(output)
    return whole


def execute(notebook):
    """The outputs of every code cell, by the cell's id; ends with a message where a cell fails."""
    manager = KernelManager(kernel_name="deno")
    try:
        manager.start_kernel()
    except (NoSuchKernel, FileNotFoundError) as error:
        sys.exit(f"The TypeScript kernel is missing ({error}). Install it with: npm --prefix examples/notebook ci")
    client = manager.client()
    try:
        client.start_channels()
        client.wait_for_ready(timeout=START_SECONDS)
        runner = Runner(client)
        runner.listen()
        asked = {}
        for cell in notebook.cells:
            if cell.cell_type != "code":
                continue
            asked[cell.id] = message = client.execute(cell.source)
            if not runner.wait(message, CELL_SECONDS):
                sys.exit(f"Cell {cell.id} is not done within {CELL_SECONDS} s.")
            runner.settle(QUIET_SECONDS)
            for output in runner.outputs.get(message, []):
                if output.output_type == "error":
                    sys.exit(f"Cell {cell.id} fails:\n" + "\n".join([output.evalue, *output.traceback]))
        runner.settle(QUIET_AT_THE_END_SECONDS)
        return {cell: merged(runner.outputs.get(message, [])) for cell, message in asked.items()}
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)


def lines(outputs):
    return json.dumps(outputs, indent=1, ensure_ascii=False, sort_keys=True).replace("\\n", "\n").splitlines()


def main():
    notebook = nbformat.read(NOTEBOOK, as_version=4)
    outputs = execute(notebook)
    if "--check" not in sys.argv:
        for count, cell in enumerate((cell for cell in notebook.cells if cell.id in outputs), 1):
            cell.outputs = outputs[cell.id]
            cell.execution_count = count
        return nbformat.write(notebook, NOTEBOOK)
    wrong = [cell for cell in notebook.cells if cell.id in outputs and cell.outputs != outputs[cell.id]]
    for cell in wrong:
        print(f"Cell {cell.id} gives other outputs than those committed:")
        for line in difflib.unified_diff(lines(cell.outputs), lines(outputs[cell.id]), "committed", "now", n=0):
            print(f"  {line[:200]}")
    if wrong:
        sys.exit("Look at them, and commit what `npm run notebook` writes.")
    print(f"{len(outputs)} cells give the outputs that are committed.")


main()
