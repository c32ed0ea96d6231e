"""The stand-in's control side, as far as measuring needs it, and a club in it."""
import json
import urllib.error
import urllib.request

from process import Process


class StandIn:
    def __init__(self, dll):
        self.process = Process(0, ["dotnet", dll, "--no-limits", "--no-log", "--allow-privileged"])
        self.token = self.process.wait_for("token ")[0].split(" ", 1)[1]
        self.address = self.process.lines[0][1]
        world = self.get("world")
        self.guild = world["guilds"][0]
        self.channel = next(c["id"] for c in world["channels"] if c["guild"] == self.guild["id"] and c["type"] == 0)
        others = [p["id"] for p in world["people"] if not p["bot"] and p["id"] != self.guild["owner"]]
        self.person = others[-1]

    def flood(self, called):
        return self.post("flood", person=self.person, channel=self.channel, count=20_000, called=called)

    def echo(self, called, warm_up, rounds):
        return self.post("echo", person=self.person, channel=self.channel, warm_up=warm_up, rounds=rounds, called=called)

    def threads(self):
        return [c["id"] for c in self.get("world")["channels"] if c["parent"] == self.channel and not c["archived"]]

    def get(self, name):
        return self._call(name, None)

    def post(self, control, **said):
        return self._call(control, json.dumps(said).encode())

    def _call(self, name, body):
        try:
            with urllib.request.urlopen(f"{self.address}/control/{name}", body, 400) as answer:
                return json.load(answer)
        except urllib.error.HTTPError as refused:
            raise RuntimeError(f"{name}: {refused.read().decode()}") from None

    def end(self):
        self.process.end()
