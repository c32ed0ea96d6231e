"""Measures the clients one after the other, on the same machine, in the same run. Started by run.sh, which says how.
Prints every figure of every run as one line of JSON, and last a table: least / median / most."""
import argparse
import json
import os
import statistics
import tempfile
import time

from process import Process
from standin import StandIn
from turns import Talks

read = argparse.ArgumentParser()
read.add_argument("--stand-in", required=True)
read.add_argument("--program", required=True)
read.add_argument("--echo-js", help="folder of echo.mjs with discord.js beside it")
read.add_argument("--echo-py", help="echo.py")
read.add_argument("--runs", type=int, default=3)
read.add_argument("--rounds", type=int, default=300)
read.add_argument("--turns", type=int, default=60)
read.add_argument("--variant", action="append", default=[], help="NAME=VARIABLE=VALUE,...: ours once more, with these in its environment; the variable PROGRAM names another build")
options = read.parse_args()
FLOODS, WARM_UP, SETTLE_S = 2, 50, 5


def at(values, share):
    return sorted(values)[min(len(values) - 1, int(len(values) * share))]


def start(name, stand, folder):
    if name == "discord.js":
        return Process(1, ["node", os.path.join(options.echo_js, "echo.mjs"), stand.address, stand.token]), "ready"
    if name == "python3-discord":
        return Process(1, ["/usr/bin/python3", "-W", "ignore", options.echo_py, stand.address, stand.token]), "ready"
    token = os.path.join(folder, "token")
    with open(token, "w", opener=lambda path, flags: os.open(path, flags, 0o600)) as file:
        file.write(stand.token)
    environment = {
        "SHEDBOT_DISCORD__TOKENFILE": token,
        "SHEDBOT_DISCORD__API": stand.address + "/api/v10/",
        "SHEDBOT_DISCORD__OPERATOR": "https://operator.invalid/",
        "SHEDBOT_SERVE__DATA": os.path.join(folder, "club.shed"),
        **ours[name],
    }
    return Process(1, [environment.pop("PROGRAM", options.program), "serve"], environment, folder), "a new session"


def measure(name, run):
    figures = {}
    called = name in ours
    with tempfile.TemporaryDirectory() as folder:
        stand = StandIn(options.stand_in)
        client = None
        try:
            client, sign = start(name, stand, folder)
            figures["start to ready, ms"] = client.wait_for(sign)[1]
            time.sleep(SETTLE_S)
            figures["idle memory, MiB"] = client.rss_mib()
            figures["processor time until idle, ms"] = client.cpu_us() / 1000
            talks = Talks(stand, run)
            if called:
                talks.set_up()
            echo = stand.echo(called, WARM_UP, options.rounds)
            figures["bare answer p50, ms"], figures["bare answer p99, ms"] = echo["p50"], echo["p99"]
            for flood in range(FLOODS):
                before = client.cpu_us()
                told = stand.flood(called)
                figures[f"processor time an event, flood {flood + 1}, us"] = (client.cpu_us() - before) / (told["events"] + 1)
                figures[f"events a second, flood {flood + 1}"] = told["events_per_second"]
            figures["processor time an event, us"] = statistics.mean(figures[f"processor time an event, flood {n + 1}, us"] for n in range(FLOODS))
            figures["bytes an event"] = told["bytes"] / (told["events"] + 1)
            figures["memory after the floods, MiB"] = client.rss_mib()
            figures["highest memory until then, MiB"] = client.rss_mib("VmHWM")
            if name == "ours":
                converse(talks, client, figures)
        finally:
            if client:
                client.end()
            stand.end()
    return figures


def converse(talks, client, figures):
    talks.begin()
    for kind, deed, rounds in (("press without a turn", talks.why, options.rounds), ("full turn", talks.turn, options.turns)):
        for _ in range(min(WARM_UP, max(1, rounds // 5))):
            deed()
        before = client.cpu_us()
        took = [deed() for _ in range(rounds)]
        figures[f"{kind}, processor time, ms"] = (client.cpu_us() - before) / 1000 / rounds
        figures[f"{kind} p50, ms"], figures[f"{kind} p99, ms"] = at(took, 0.5), at(took, 0.99)
    figures["memory after the turns, MiB"] = client.rss_mib()


ours = {"ours": {}}
for variant in options.variant:
    name, _, settings = variant.partition("=")
    ours["ours, " + name] = dict(pair.split("=", 1) for pair in settings.split(",") if pair)
peers = [name for name, there in (("discord.js", options.echo_js), ("python3-discord", options.echo_py)) if there]
seen = {name: [] for name in [*peers, *ours]}
print(f"load average at the start {os.getloadavg()}, nice {os.nice(0)}", flush=True)
for run in range(options.runs):
    for name in seen:
        figures = measure(name, run)
        seen[name].append(figures)
        print(json.dumps({"run": run + 1, "client": name, "load": os.getloadavg()[0], **{k: round(v, 2) for k, v in figures.items()}}), flush=True)

print("\n| | " + " | ".join(seen) + " |\n|---|" + "---|" * len(seen))
for figure in dict.fromkeys(key for runs in seen.values() for one in runs for key in one):
    row = []
    for runs in seen.values():
        values = [one[figure] for one in runs if figure in one]
        row.append(" / ".join(f"{v:,.{0 if v >= 1000 else 1 if v >= 10 else 2}f}" for v in (min(values), statistics.median(values), max(values))) if values else "")
    print(f"| {figure} | " + " | ".join(row) + " |")
