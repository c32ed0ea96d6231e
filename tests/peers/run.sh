#!/usr/bin/env bash
# Proves the stand-in with other people's clients of the chat platform: each plays one club evening against it, checked from both ends.
# usage: tests/peers/run.sh      installs the clients in a temporary folder and leaves the machine as it was
# Prints for each client: peer NAME: N checks passed, M failed        or: peer NAME: skipped: why
# Exits with 1 when a check failed; a client that cannot be had here is no failure unless SHEDBOT_PEERS=required.
set -uo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
project=$here/../ShedBot.DiscordStandIn
work=$(mktemp -d)
standin=""
bad=0
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

close_standin() {
  [ -z "$standin" ] || { kill "$standin" 2>/dev/null; wait "$standin" 2>/dev/null; }
  standin=""
}
trap 'close_standin; rm -rf "$work"' EXIT

skip() { # NAME WHY
  echo "peer $1: skipped: $2"
  [ "${SHEDBOT_PEERS:-}" != required ] || bad=1
}

# Prints nothing when the client is there to use, or else why it is not.
get_discordjs() {
  command -v node >/dev/null && command -v npm >/dev/null || { echo "node and npm are not here"; return; }
  cp -r "$here/discordjs" "$work/discordjs"
  (cd "$work/discordjs" && timeout 60 npm install --no-audit --no-fund --no-package-lock --ignore-scripts --loglevel=error \
    --fetch-retries=1 --fetch-retry-mintimeout=1000) >"$work/npm.log" 2>&1 \
    || echo "npm could not install it ($(tail -n 1 "$work/npm.log" | cut -c 1-80))"
}

get_python() {
  [ -x /usr/bin/python3 ] || { echo "/usr/bin/python3 is not here"; return; }
  cp -r "$here/python" "$work/python"
  /usr/bin/python3 -c 'import discord' 2>/dev/null && return
  command -v apt-get >/dev/null && command -v dpkg >/dev/null || { echo "apt is not here"; return; }
  [ "$(id -u)" -eq 0 ] || { echo "apt needs root"; return; }
  mkdir -p "$work/debs/partial"
  { timeout 60 apt-get update -q \
    && timeout 60 apt-get install -y -q --no-install-recommends --download-only -o Dir::Cache::archives="$work/debs" python3-discord; } >"$work/apt.log" 2>&1 \
    || { echo "apt could not fetch it ($(tail -n 1 "$work/apt.log" | cut -c 1-80))"; return; }
  for package in "$work"/debs/*.deb; do dpkg -x "$package" "$work/debian" || { echo "a package could not be unpacked"; return; }; done
}

# Starts a fresh stand-in, which prints its address and then its token; other people's clients are checked leniently.
open_standin() { # LOG
  : >"$1"
  dotnet "$project/bin/Debug/net10.0/ShedBot.DiscordStandIn.dll" --lenient >"$1" 2>&1 &
  standin=$!
  for _ in $(seq 100); do
    # The token comes second: once it is there, so is the address.
    token=$(sed -n 's/^token //p' "$1")
    address=$(grep '^http://' "$1")
    [ -z "$token" ] || return 0
    kill -0 "$standin" 2>/dev/null || return 1
    sleep 0.1
  done
  return 1
}

play() { # NAME COMMAND...
  local name=$1 passed failed
  shift
  open_standin "$work/standin.log" || { echo "peer $name: the stand-in did not start"; tail -n 5 "$work/standin.log"; bad=1; close_standin; return; }
  timeout 60 "$@" "$address" "$token" >"$work/client.log" 2>&1
  close_standin
  passed=$(sed -n 's/^checks passed=\([0-9]*\) failed=[0-9]*$/\1/p' "$work/client.log")
  failed=$(sed -n 's/^checks passed=[0-9]* failed=\([0-9]*\)$/\1/p' "$work/client.log")
  if [ -z "$passed" ]; then
    tail -n 15 "$work/client.log"
    passed=0 failed=1
  fi
  grep '^  ' "$work/client.log"
  echo "peer $name: $passed checks passed, $failed failed"
  [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ] || bad=1
}

dotnet build "$project" -v quiet >"$work/build.log" 2>&1 || { cat "$work/build.log"; exit 1; }

get_discordjs >"$work/discordjs.why" & npm=$!
get_python >"$work/python.why" & apt=$!
wait "$npm" "$apt"

tried() { # NAME FILE_WITH_WHY_NOT COMMAND...
  local name=$1 why
  why=$(cat "$2")
  shift 2
  if [ -z "$why" ]; then play "$name" "$@"; else skip "$name" "$why"; fi
}

tried discord.js "$work/discordjs.why" node "$work/discordjs/client.mjs"
tried python3-discord "$work/python.why" \
  env PYTHONPATH="$work/debian/usr/lib/python3/dist-packages" PYTHONDONTWRITEBYTECODE=1 /usr/bin/python3 -W ignore "$work/python/client.py"
exit "$bad"
