#!/usr/bin/env bash
# Coverage of length-forecast on simulated jobs that its model does not know.
#   bash tests/forecast/run.sh [BINARY]      default: the release build
# Python's standard library only.
set -euo pipefail

HERE="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
TARGET="$(realpath -m "${CARGO_TARGET_DIR:-$HERE/../../target}")"
BINARY="$(realpath "${1:-$TARGET/release/bearwell}")"
cd "$HERE"
exec python3 -B coverage.py "$BINARY"
