# Steps of .ci/run that need no running service.

install_tools() {
    local -a missing=()
    command -v qemu-x86_64 >/dev/null || missing+=(qemu-user)
    command -v rsvg-convert >/dev/null || missing+=(librsvg2-bin)
    command -v curl >/dev/null || missing+=(curl)
    command -v jq >/dev/null || missing+=(jq)
    command -v valgrind >/dev/null || missing+=(valgrind)
    command -v systemd-analyze >/dev/null || missing+=(systemd)
    # venv without pip is no use, so ask for both
    python3 -c 'import venv, ensurepip' 2>/dev/null || missing+=(python3 python3-venv)
    if ((${#missing[@]})); then
        apt-get update -q
        apt-get install -q -y --no-install-recommends "${missing[@]}"
    fi
    # a debug build of the tool takes half the time and does the same work
    if ! cargo deny --version 2>/dev/null | grep -qx 'cargo-deny 0\.20\.2'; then
        CARGO_TARGET_DIR="$TARGET/tools" cargo install cargo-deny --debug --locked --version 0.20.2
    fi
    rustc --version
    cargo deny --version
    qemu-x86_64 --version | head -n 1
}

# unused FILES...: names defined in them ("NAME = \"id\", ...") that no other file mentions.
unused() {
    local bad=0 name file others=()
    for file in "$@"; do others+=(":!$file"); done
    while IFS= read -r name; do
        if ! git grep -qw "$name" -- 'service/*.rs' "${others[@]}"; then
            echo "$name is listed and never used"
            bad=1
        fi
    done < <(git grep -hoE '^ +[A-Z0-9_]+ = "[a-z0-9_]+",' -- "$@" | sed -E 's/^ +([A-Z0-9_]+) .*/\1/')
    return "$bad"
}

# Rules of the house that no compiler checks.
house_rules() {
    local bad=0 file lines
    while IFS= read -r file; do
        lines=$(wc -l <"$file")
        if ((lines > 500)); then
            echo "$file: $lines lines, at most 500"
            bad=1
        fi
        if [[ $(head -c 3 "$file") != '//!' ]]; then
            echo "$file: does not open with what lives here (//!)"
            bad=1
        fi
    done < <(git ls-files -- '*.rs')
    if git grep -nE '\b(todo|unimplemented|dbg)!|#\[ignore' -- '*.rs'; then
        echo "unfinished code or an ignored test"
        bad=1
    fi
    # a file that no `mod` names is not compiled
    while IFS= read -r file; do
        local folder=${file%/*} name=${file##*/}
        case $name in lib.rs | main.rs | mod.rs) continue ;; esac
        if ! grep -qsE "^ *(pub |pub\(crate\) )?mod ${name%.rs};" "$folder/mod.rs" "$folder/lib.rs" "$folder.rs"; then
            echo "$file: no mod names it"
            bad=1
        fi
    done < <(git ls-files -- 'service/*/src/*.rs' 'client/src/*.rs')
    # what nothing uses does not belong in the catalogues
    unused 'service/engine/src/source' || bad=1
    unused 'service/engine/src/*/codes.rs' 'service/engine/src/catalogue/common.rs' || bad=1
    return "$bad"
}

# names PACKAGE FLAGS...: crates in its tree, without test-only ones, one a line.
names() {
    local package=$1
    shift
    cargo tree --locked -p "$package" -e normal,build --prefix none --format '{p}' "$@" |
        cut -d' ' -f1 | sort -u
}

# must_not_hold PACKAGE REGEX FLAGS...: fails when a crate in its tree matches.
must_not_hold() {
    local package=$1 regex=$2 found
    shift 2
    names "$package" "$@" >"$SCRATCH/tree"
    found=$(grep -xE "$regex" "$SCRATCH/tree" || true)
    echo "$package $*: $(wc -l <"$SCRATCH/tree") crates, none of $regex${found:+: FOUND $found}"
    [[ -z $found ]]
}

# Arrows only point down.
dependency_rule() {
    if must_not_hold bearwell 'actix-web' >/dev/null; then
        echo "this proof proves nothing: it does not find actix-web in the service"
        return 1
    fi
    must_not_hold bearwell-engine 'tokio.*|actix.*|reqwest|hyper.*|bearwell|bearwell-(papers|client|tests)' --all-features
    must_not_hold bearwell-engine 'utoipa.*' --no-default-features
    must_not_hold bearwell-papers 'tokio.*|actix.*|reqwest|hyper.*|bearwell|bearwell-(client|tests)' --all-features
    must_not_hold bearwell-client 'actix.*|utoipa.*|bearwell|bearwell-(papers|tests)' --all-features
    must_not_hold bearwell 'reqwest|bearwell-(client|tests)' --all-features
}

dependency_policy() {
    cargo deny --locked check --hide-inclusion-graph licenses bans sources
    echo "note: advisories are not checked, their database cannot be fetched here"
}

lint() {
    cargo clippy --workspace --all-targets --all-features -- -D warnings
    cargo clippy -p bearwell-engine --no-default-features --all-targets -- -D warnings
}

# The release build, and beside it what needs debug builds only: for most of its time the program
# is put together in one piece, on one core.
release_build_and_debug() {
    local beside build status=0
    debug_work &
    beside=$!
    cargo build --release -p bearwell >"$SCRATCH/release.log" 2>&1 &
    build=$!
    wait "$beside" || status=$?
    wait "$build" || {
        status=$?
        cat "$SCRATCH/release.log"
    }
    tail -n 1 "$SCRATCH/release.log"
    return "$status"
}

debug_work() {
    document_drift
    check_alone
    selfcheck_by debug "$TARGET/debug/bearwell"
}

# Each crate by itself.
check_alone() {
    cargo check -p bearwell-engine --no-default-features
    cargo check -p bearwell-engine
    cargo check -p bearwell-engine --features openapi
    cargo check -p bearwell-papers
    cargo check -p bearwell-client
    cargo check -p bearwell-client --features offline
    cargo check -p bearwell-client --features rustls
}

document_drift() {
    cargo run -q -p bearwell -- openapi >"$SCRATCH/bearwell.json"
    cmp "$SCRATCH/bearwell.json" openapi/bearwell.json
    echo "openapi/bearwell.json is what the service serves ($(wc -c <openapi/bearwell.json) bytes)"
}

# selfcheck_by NAME COMMAND...: what `selfcheck` prints, into a file of that name.
selfcheck_by() {
    local name=$1
    shift
    "$@" selfcheck >"$SCRATCH/self.$name" 2>"$SCRATCH/self.$name.err" || {
        cat "$SCRATCH/self.$name" "$SCRATCH/self.$name.err"
        return 1
    }
    echo "$name: $(tail -n 1 "$SCRATCH/self.$name")"
}

# The same calculations by other builds and other processors give the same bytes: every
# example, answers and drawings, under one digest. The debug build was asked before.
same_bytes_by_build() {
    local cpu name pid
    local -a pids=()
    # each takes one core, so they go side by side
    selfcheck_by release "$TARGET/release/bearwell" &
    pids+=($!)
    for cpu in Nehalem Haswell; do
        selfcheck_by "$cpu" qemu-x86_64 -cpu "$cpu" "$TARGET/release/bearwell" &
        pids+=($!)
    done
    for pid in "${pids[@]}"; do wait "$pid"; done
    for name in release Nehalem Haswell; do
        cmp "$SCRATCH/self.debug" "$SCRATCH/self.$name"
    done
    head -n -1 "$SCRATCH/self.debug"
}

# helix-capacity and installation-record calculated anew in Python, compared with the release
# build.
independent_recomputation() {
    CARGO_TARGET_DIR="$TARGET" bash tests/recompute/run.sh "$TARGET/release/bearwell"
}

# Bands of length-forecast against jobs from a generator in Python that its model does not know.
forecast_coverage() {
    CARGO_TARGET_DIR="$TARGET" bash tests/forecast/run.sh "$TARGET/release/bearwell"
}

# Frost depths against own solutions of heat conduction with freezing, on 20 grounds.
frost_conduction() {
    CARGO_TARGET_DIR="$TARGET" bash tests/frost/run.sh "$TARGET/release/bearwell"
}

# Neutral planes and drag forces against an integration by numbers, on random piles.
drag_integration() {
    CARGO_TARGET_DIR="$TARGET" bash tests/drag/run.sh "$TARGET/release/bearwell"
}

# DXF and CSV of pile-layout read back by a general library, against its JSON.
staking_read_back() {
    CARGO_TARGET_DIR="$TARGET" bash tests/staking/run.sh "$TARGET/release/bearwell"
}

# Lines and grids of beam by a general library of structures and by an own grillage.
grillage_twice() {
    CARGO_TARGET_DIR="$TARGET" bash tests/grillage/run.sh "$TARGET/release/bearwell"
}

# A curve of 200 depths against one depth, in instructions of the whole call.
curve_cost() {
    python3 tests/cost/curve_cost.py "$TARGET/release/bearwell" \
        openapi/examples/helix-capacity/depth-curve-summary.json
}

# An independent renderer takes every committed drawing.
drawings_render() {
    local drawing count=0
    while IFS= read -r drawing; do
        rsvg-convert --dpi-x 100 --dpi-y 100 -o "$SCRATCH/drawing.png" "$drawing"
        [[ -s "$SCRATCH/drawing.png" ]]
        count=$((count + 1))
    done < <(git ls-files -- 'openapi/pictures/*.svg')
    echo "$count drawings rendered"
    ((count > 0))
}

unit_file() {
    # the program is not installed here, so a copy of the unit names one that is
    sed 's|^ExecStart=[^ ]*|ExecStart=/bin/true|' deploy/bearwell.service >"$SCRATCH/bearwell.service"
    systemd-analyze verify --man=no "$SCRATCH/bearwell.service"
    echo "deploy/bearwell.service is well formed"
}
