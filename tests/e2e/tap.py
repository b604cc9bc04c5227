"""Stands between a client and the server and writes down every message, in both directions.

    python tap.py LOG COMMAND...

One line of JSON a message: `{"from": "client" | "server", "message": …}`. Bytes pass through unchanged, and the exit
status is the server's. What the server sends is checked against the protocol afterwards (`protocol.py`), whoever the
client was.
"""

import json
import os
import subprocess
import sys
import threading


def frames(buffer: bytearray):
    """Takes the complete messages off the front of a buffer."""
    while True:
        head = buffer.find(b"\r\n\r\n")
        if head < 0:
            return
        length = None
        for line in bytes(buffer[:head]).split(b"\r\n"):
            name, _, value = line.partition(b":")
            if name.strip().lower() == b"content-length":
                length = int(value)
        if length is None:
            raise ValueError(f"header without a length: {bytes(buffer[:head])!r}")
        if len(buffer) < head + 4 + length:
            return
        yield bytes(buffer[head + 4 : head + 4 + length])
        del buffer[: head + 4 + length]


def main() -> int:
    log = open(sys.argv[1], "a", encoding="utf-8")
    lock = threading.Lock()
    server = subprocess.Popen(sys.argv[2:], stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    def note(sender: str, message) -> None:
        with lock:
            log.write(json.dumps({"from": sender, "message": message}) + "\n")
            log.flush()

    def pump(sender: str, source: int, sink) -> None:
        buffer, readable = bytearray(), True
        while data := os.read(source, 1 << 16):
            # Written down before it goes on, so that no answer stands before its request.
            buffer += data
            try:
                for body in frames(buffer) if readable else ():
                    note(sender, json.loads(body))
            except ValueError as error:  # what tests send on purpose; from the server it is a fault
                readable = False
                note(sender, {"unreadable": str(error)})
            try:
                sink.write(data)
                sink.flush()
            except (BrokenPipeError, ValueError):
                break
        if buffer and readable:
            note(sender, {"unreadable": f"{len(buffer)} bytes that are no whole message"})
        try:
            sink.close()
        except BrokenPipeError:
            pass

    up = threading.Thread(target=pump, args=("client", sys.stdin.fileno(), server.stdin), daemon=True)
    down = threading.Thread(target=pump, args=("server", server.stdout.fileno(), sys.stdout.buffer), daemon=True)
    up.start()
    down.start()
    status = server.wait()
    down.join(5)
    return status


if __name__ == "__main__":
    code = main()
    sys.stdout = None  # it is closed; nothing is left to flush
    os._exit(code if code >= 0 else 128 - code)
