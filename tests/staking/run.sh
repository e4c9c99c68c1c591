#!/usr/bin/env bash
# Reads the DXF and CSV of pile-layout back with a general library and compares them with JSON.
#   bash tests/staking/run.sh [BINARY]      default: the release build
# Makes a virtual environment below the target directory, anew only when requirements.txt or
# Python changes. A package that cannot be had, or whose hash differs, fails it.
# What is fetched (see requirements.in) is run here and never shipped.
set -euo pipefail

HERE="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
TARGET="$(realpath -m "${CARGO_TARGET_DIR:-$HERE/../../target}")"
BINARY="$(realpath "${1:-$TARGET/release/bearwell}")"
cd "$HERE"
VENV="$TARGET/staking-venv"

stamp="$(cat requirements.txt - <<<"$(python3 --version)" | sha256sum)"
if [[ "$(cat "$VENV/stamp" 2>/dev/null)" != "$stamp" ]]; then
    rm -rf "$VENV"
    python3 -m venv "$VENV"
    "$VENV/bin/python" -m pip install --quiet --disable-pip-version-check --no-deps \
        --require-hashes --only-binary :all: -r requirements.txt
    echo "$stamp" >"$VENV/stamp"
fi
exec "$VENV/bin/python" -B staking.py "$BINARY"
