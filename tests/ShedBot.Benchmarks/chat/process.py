"""A measured process: what it prints, what it has used of the processor, what it holds of memory. Linux only."""
import os
import subprocess
import threading
import time

TICK_US = 1_000_000 / os.sysconf("SC_CLK_TCK")


class Process:
    def __init__(self, core, command, environment=None, folder=None):
        self.lines = []
        self.came = threading.Condition()
        self.started = time.monotonic()
        self.process = subprocess.Popen(
            ["taskset", "-c", str(core), *command], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
            env={**os.environ, **(environment or {})}, cwd=folder)
        threading.Thread(target=self._listen, daemon=True).start()

    def _listen(self):
        for line in self.process.stdout:
            with self.came:
                self.lines.append((time.monotonic(), line.rstrip("\n")))
                self.came.notify_all()

    def wait_for(self, text, seconds=120):
        """The first line that holds the text, and how long after the start it was printed, in ms."""
        until = time.monotonic() + seconds
        with self.came:
            while True:
                for at, line in self.lines:
                    if text in line:
                        return line, (at - self.started) * 1000
                if time.monotonic() > until or self.process.poll() is not None:
                    raise RuntimeError(f"never said '{text}'; said:\n" + "\n".join(line for _, line in self.lines[-20:]))
                self.came.wait(0.5)

    def cpu_us(self):
        """Processor time so far, of all its threads: user and system. In steps of the system's clock tick, usually 10 ms."""
        with open(f"/proc/{self.process.pid}/stat") as stat:
            fields = stat.read().rsplit(")", 1)[1].split()
        return (int(fields[11]) + int(fields[12])) * TICK_US

    def rss_mib(self, name="VmRSS"):
        with open(f"/proc/{self.process.pid}/status") as status:
            return next(int(line.split()[1]) for line in status if line.startswith(name + ":")) / 1024

    def end(self):
        if self.process.poll() is None:
            self.process.terminate()
            try:
                self.process.wait(15)
            except subprocess.TimeoutExpired:
                self.process.kill()
                self.process.wait()
