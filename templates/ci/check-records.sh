#!/usr/bin/env bash
# Checks the records on a machine that builds, at every push: its share of the shells, and only those that changed.
#   SHARE   which share of how many machines, as 1/4 (not set: all shells)
#   BEFORE  the commit before the push (not set, or not known here: nothing is left out)
# It needs the whole history, since days of entry, sign-offs and close-outs are read from it, and shellbook on the path.
set -euo pipefail
cd "$(dirname "$0")"
wanted=()
if [ -n "${SHARE:-}" ]; then wanted+=(--share "$SHARE"); fi
if [ -n "${BEFORE:-}" ] && git rev-parse --verify --quiet "$BEFORE^{commit}" > /dev/null; then wanted+=(--since "$BEFORE"); fi
shellbook check "${wanted[@]}" --no-color
