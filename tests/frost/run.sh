#!/usr/bin/env bash
# Frost depths of frost-depth against own solutions of heat conduction with freezing, on 20 grounds.
#   bash tests/frost/run.sh [BINARY]      default: the release build
# Python's standard library only.
set -euo pipefail

HERE="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
TARGET="$(realpath -m "${CARGO_TARGET_DIR:-$HERE/../../target}")"
BINARY="$(realpath "${1:-$TARGET/release/bearwell}")"
cd "$HERE"
exec python3 -B frost.py "$BINARY"
