#!/usr/bin/env bash
# Measures ShedBot beside two public client libraries of the chat platform, one after the other in one run, all against the stand-in.
# usage: tests/ShedBot.Benchmarks/chat/run.sh [--runs N] [--rounds N] [--turns N] [--variant NAME=VARIABLE=VALUE,...]
# Linux with two cores or more: the stand-in is kept on core 0, the client on core 1. A library that cannot be had here is left out.
# What the figures mean, and what they were: docs/chat-benchmarks.md
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
root=$(cd "$here/../../.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 PYTHONDONTWRITEBYTECODE=1

dotnet publish "$root/src/ShedBot" -c Release -o "$work/program" -v quiet
dotnet build "$root/tests/ShedBot.DiscordStandIn" -c Release -v quiet

clients=()
if command -v npm >/dev/null; then
  cp "$here/echo.mjs" "$root/tests/peers/discordjs/package.json" "$work"
  if (cd "$work" && npm install --no-audit --no-fund --no-package-lock --ignore-scripts --loglevel=error >npm.log 2>&1); then
    clients+=(--echo-js "$work")
  else
    echo "discord.js is left out: $(tail -n 1 "$work/npm.log")"
  fi
fi
if /usr/bin/python3 -c 'import discord' 2>/dev/null; then
  clients+=(--echo-py "$here/echo.py")
else
  echo "python3-discord is left out: apt-get install --no-install-recommends python3-discord"
fi

/usr/bin/python3 "$here/measure.py" --stand-in "$root/tests/ShedBot.DiscordStandIn/bin/Release/net10.0/ShedBot.DiscordStandIn.dll" \
  --program "$work/program/ShedBot" "${clients[@]}" "$@"
