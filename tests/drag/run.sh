#!/usr/bin/env bash
# Neutral plane and drag force of drag-force against an integration by numbers, on random piles.
#   bash tests/drag/run.sh [BINARY]      default: the release build
# Python's standard library only.
set -euo pipefail

HERE="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
TARGET="$(realpath -m "${CARGO_TARGET_DIR:-$HERE/../../target}")"
BINARY="$(realpath "${1:-$TARGET/release/bearwell}")"
cd "$HERE"
exec python3 -B drag.py "$BINARY"
