#!/usr/bin/env bash
# Kills the host (kill -9) again and again in the middle of a conversation and counts what was lost.
# usage: tests/crash/run.sh [kills]     default 100; prints: kills=100 acknowledged=... lost=0 doubled=0
set -euo pipefail
cd "$(dirname "$0")/../.."
SHEDBOT_KILLS="${1:-100}" dotnet test tests/ShedBot.Tests --filter KillTests --logger "console;verbosity=detailed" | grep -E "kills=|Passed!|Failed!|error|Error Message" -A 2
