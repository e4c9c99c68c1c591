# Steps of .ci/run that start the service on a loopback port, ask it, and stop it by its pid.

PORT=""
ASKED=0

# A loopback port on which nothing listens, below those that clients are given: one that a client has
# just left cannot be listened on.
free_port() {
    local port
    while :; do
        port=$((20000 + RANDOM % 12000))
        (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null || {
            echo "$port"
            return
        }
    done
}

# start_service WORKERS: returns once it answers.
start_service() {
    PORT=$(free_port)
    "$TARGET/release/bearwell" serve --listen "127.0.0.1:$PORT" --workers "$1" \
        >"$SCRATCH/service.log" 2>&1 </dev/null &
    SERVICE_PID=$!
    local try
    for try in {1..100}; do
        if curl -sf -o /dev/null "http://127.0.0.1:$PORT/health/ready"; then return; fi
        kill -0 "$SERVICE_PID" 2>/dev/null || break
        sleep 0.1
    done
    echo "the service did not come up after $try tries:"
    cat "$SCRATCH/service.log"
    return 1
}

# Stops it as an orchestrator would; it must end by itself and without an error.
stop_service() {
    [[ -n $SERVICE_PID ]] || return 0
    local pid=$SERVICE_PID status=0
    SERVICE_PID=""
    kill -TERM "$pid" 2>/dev/null || true
    wait "$pid" || status=$?
    if ((status != 0)); then echo "the service ended with $status"; fi
    return "$status"
}

# compare_drawing NOUN FILE: the drawing by both doors.
compare_drawing() {
    curl -sS --fail-with-body -o "$SCRATCH/http" -H 'content-type: application/json' \
        -H 'accept: image/svg+xml' --data-binary "@$2" "http://127.0.0.1:$PORT/v1/$1"
    "$TARGET/release/bearwell" calc "$1" "$2" --accept image/svg+xml >"$SCRATCH/calc"
    cmp "$SCRATCH/http" "$SCRATCH/calc"
    cat "$SCRATCH/http" >>"$SCRATCH/all"
}

# compare_csv FILE: the request in CSV by both doors, and in JSON beside it.
compare_csv() {
    local noun=${1#openapi/examples/}
    noun=${noun%%/*}
    curl -sS --fail-with-body -o "$SCRATCH/http" -H 'content-type: text/csv' \
        --data-binary "@$1" "http://127.0.0.1:$PORT/v1/$noun"
    "$TARGET/release/bearwell" calc "$noun" "$1" >"$SCRATCH/calc"
    cmp "$SCRATCH/http" "$SCRATCH/calc"
    cmp "$SCRATCH/http" "${1%.csv}.answer.json"
}

# Each example by HTTP and by `bearwell calc`: the same bytes, 200 or problem as its folder says.
# Sets ASKED to the requests made.
compare_examples() {
    local file noun status exit_code want_exit count=0 drawings=0
    while IFS= read -r file; do
        noun=${file#openapi/examples/}
        noun=${noun%%/*}
        want_exit=0
        [[ $file == */refused/* ]] && want_exit=2
        status=$(curl -sS -o "$SCRATCH/http" -w '%{http_code}' -H 'content-type: application/json' \
            --data-binary "@$file" "http://127.0.0.1:$PORT/v1/$noun")
        exit_code=0
        "$TARGET/release/bearwell" calc "$noun" "$file" >"$SCRATCH/calc" 2>"$SCRATCH/calc.err" || exit_code=$?
        if ((exit_code != want_exit)) || { ((want_exit == 0)) && [[ $status != 200 ]]; } ||
            { ((want_exit == 2)) && [[ $status != 4* ]]; }; then
            echo "$file: HTTP $status, calc exit $exit_code (wanted $want_exit)"
            cat "$SCRATCH/calc.err"
            return 1
        fi
        cmp "$SCRATCH/http" "$SCRATCH/calc" || {
            echo "$file: HTTP and calc differ"
            return 1
        }
        cat "$SCRATCH/http" >>"$SCRATCH/all"
        count=$((count + 1))
        if [[ $noun == pile-layout && $want_exit == 0 ]]; then
            compare_drawing "$noun" "$file"
            drawings=$((drawings + 1))
        fi
    done < <(git ls-files -- 'openapi/examples/*.json' | grep -vE '\.(answer|problem)\.json$')
    local tables=0
    while IFS= read -r file; do
        compare_csv "$file"
        tables=$((tables + 1))
    done < <(git ls-files -- 'openapi/examples/*.csv')
    ASKED=$((count + drawings + tables))
    echo "$count examples, $drawings drawings and $tables requests in CSV, the same bytes by both doors"
    ((count > 0 && drawings > 0 && tables > 0))
}

same_bytes_by_door() {
    local workers logged before=""
    for workers in 1 4; do
        : >"$SCRATCH/all"
        start_service "$workers"
        compare_examples
        stop_service
        # the last ones too, which are written after their response is sent
        logged=$(grep -c '"path":"/v1/' "$SCRATCH/service.log" || true)
        if ((logged != ASKED)); then
            echo "$ASKED requests and $logged lines of the log"
            return 1
        fi
        local sum
        sum=$(sha256sum <"$SCRATCH/all")
        echo "$workers workers: sha256 ${sum%% *}"
        if [[ -n $before && $before != "$sum" ]]; then
            echo "the number of workers changes the bytes"
            return 1
        fi
        before=$sum
    done
}

# Runs each fenced block of README.md that calls curl, as pasted, against a live service;
# only the port is another one. An HTTP error fails it, unless the block shows a refusal. A
# block of JSON that follows must be part of the answer.
readme_commands() {
    local blocks="$SCRATCH/blocks" block count=0
    mkdir "$blocks" "$blocks/here"
    awk -v out="$blocks" '
        /^```(sh|json)$/ { kind = substr($0, 4); text = ""; next }
        /^```/ {
            if (kind == "sh" && text ~ /(^|\n)curl /) name = sprintf("%s/%02d", out, ++n)
            else if (kind == "sh") name = ""
            if ((kind == "sh" || kind == "json") && name != "") printf "%s", text > (name "." kind)
            kind = (kind == "" ? "other" : ""); next
        }
        kind == "sh" || kind == "json" { text = text $0 "\n" }
    ' README.md
    ln -s "$PWD/openapi" "$blocks/here/openapi"
    start_service 2
    for block in "$blocks"/*.sh; do
        sed -i "s/127\.0\.0\.1:8080/127.0.0.1:$PORT/g" "$block"
        {
            grep -q '/refused/' "$block" || echo 'curl() { command curl --fail-with-body "$@"; }'
            cat "$block"
        } >"$block.run"
        (cd "$blocks/here" && bash -euo pipefail "$block.run" >"$block.out" </dev/null) || {
            echo "this block of README.md fails:"
            cat "$block" "$block.out"
            return 1
        }
        [[ -s "$block.out" ]]
        if [[ -e "${block%.sh}.json" ]]; then
            jq -e --slurpfile part "${block%.sh}.json" 'contains($part[0])' "$block.out" >/dev/null || {
                echo "the answer does not hold what README.md says:"
                cat "${block%.sh}.json" "$block.out"
                return 1
            }
        fi
        count=$((count + 1))
    done
    stop_service
    echo "$count blocks of README.md work as pasted"
    ((count > 0))
}
