#!/usr/bin/env bash
# Reactions, moments and shears of pile-layout against a general library of structures and an own grillage.
#   bash tests/grillage/run.sh [BINARY]      default: the release build
# Makes a virtual environment below the target directory, anew only when requirements.txt or
# Python changes. A package that cannot be had, or whose hash differs, fails it.
set -euo pipefail

HERE="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
TARGET="$(realpath -m "${CARGO_TARGET_DIR:-$HERE/../../target}")"
BINARY="$(realpath "${1:-$TARGET/release/bearwell}")"
cd "$HERE"
VENV="$TARGET/grillage-venv"

stamp="$(cat requirements.txt - <<<"$(python3 --version)" | sha256sum)"
if [[ "$(cat "$VENV/stamp" 2>/dev/null)" != "$stamp" ]]; then
    rm -rf "$VENV"
    python3 -m venv "$VENV"
    "$VENV/bin/python" -m pip install --quiet --disable-pip-version-check --no-deps \
        --require-hashes --only-binary :all: -r requirements.txt
    echo "$stamp" >"$VENV/stamp"
fi
exec "$VENV/bin/python" -B grillage.py "$BINARY"
