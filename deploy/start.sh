#!/usr/bin/env bash
# Builds WeldTrace, starts it in the foreground and prints the address to open.
set -euo pipefail

usage() {
    cat <<'TEXT'
deploy/start.sh [--demo] [--port N] [--data DIR] [--listen ADDRESS]

  --demo            an invented workshop with accounts for every role, in a folder of its own, on this machine only
  --port N          first port to try (5080); the next free one is taken
  --data DIR        data folder; else /var/lib/weldtrace as root, ~/.local/share/weldtrace otherwise
  --listen ADDRESS  address to listen on (127.0.0.1); others reach WeldTrace better through a proxy with TLS

Settings of the environment, such as ConnectionStrings__WeldTrace, are passed on. Ctrl-C stops everything.
TEXT
}

fail() {
    echo "$1" >&2
    exit 2
}

demo=false port=5080 data="" listen=127.0.0.1
while [ $# -gt 0 ]; do
    case $1 in
        --demo) demo=true ;;
        --port) port=${2:-} && shift ;;
        --data) data=${2:-} && shift ;;
        --listen) listen=${2:-} && shift ;;
        -h | --help) usage && exit 0 ;;
        *) usage >&2 && fail "Unknown argument: $1" ;;
    esac
    shift || fail "The last argument needs a value."
done
[[ $port =~ ^[0-9]{1,5}$ ]] && [ "$port" -ge 1 ] && [ "$port" -le 65535 ] || fail "--port needs a number from 1 to 65535."
[ "$demo" = false ] || [ "$listen" = 127.0.0.1 ] || fail "The demo has public passwords and listens on 127.0.0.1 only."

if [ -n "$data" ]; then
    data=$(realpath -m -- "$data")
else
    name=weldtrace$([ "$demo" = false ] || echo -demo)
    if [ "$(id -u)" -eq 0 ]; then
        data=/var/lib/$name
    else
        data=${XDG_DATA_HOME:-${HOME:?give a folder with --data}/.local/share}/$name
    fi
fi

cd "$(dirname "$0")/.."
./deploy/require-sdk.sh
packages=(libicu72 tzdata)
if [ -z "${ConnectionStrings__WeldTrace:-}" ] && [ -z "${Database__BinFolder:-}" ]; then
    packages+=(postgresql)
fi
./deploy/install-packages.sh "${packages[@]}"

if [ -e "$data/app.lock" ] && ! flock --nonblock "$data/app.lock" true 2>/dev/null; then
    fail "The data folder is already in use by another process ($data). Stop that WeldTrace, or name another folder with --data."
fi

# One folder for each data folder: building must not touch the files of a WeldTrace that runs.
published=$PWD/src/WeldTrace.Web/bin/start-$(cksum <<<"$data" | cut -d ' ' -f 1)
echo "Building ..."
log=$(mktemp)
dotnet publish src/WeldTrace.Web --configuration Release --output "$published" --nologo --verbosity quiet \
    -p:RunAnalyzers=false >"$log" 2>&1 ||
    { cat "$log" >&2 && rm -f "$log" && fail "The build failed."; }
rm -f "$log"

reachable=$([ "$listen" = 0.0.0.0 ] && echo 127.0.0.1 || echo "$listen")
is_taken() { (exec 3<>"/dev/tcp/$reachable/$1") 2>/dev/null; }
while is_taken "$port"; do
    port=$((port + 1))
    [ "$port" -le 65535 ] || fail "No free port is left."
done

cd "$published"
export ASPNETCORE_ENVIRONMENT=${ASPNETCORE_ENVIRONMENT:-Production}
export ASPNETCORE_URLS=http://$listen:$port Database__Folder=$data Demo=$demo
# Filling the workshop is over before the just-in-time compiler could earn back what it measures for a second, better version.
[ "$demo" = false ] || export DOTNET_TieredPGO=${DOTNET_TieredPGO:-0}
# What a person who starts it needs to see, and no more; Logging__LogLevel__Default=Debug shows all that is hidden.
quiet=(
    Logging__LogLevel__Microsoft=Warning
    Logging__LogLevel__Microsoft.AspNetCore.DataProtection=Error
    Logging__LogLevel__Microsoft.Extensions.Hosting.Internal.Host=Critical
)
[ -z "${Logging__LogLevel__Default:-}" ] || quiet=()
env "${quiet[@]}" dotnet WeldTrace.Web.dll &
web=$!
trap 'kill -TERM "$web" 2>/dev/null || true' INT TERM HUP

until is_taken "$port"; do
    if ! kill -0 "$web" 2>/dev/null; then
        wait "$web" || status=$?
        exit "${status:-1}"
    fi
    sleep 0.2
done
echo
echo "WeldTrace answers at http://$([ "$listen" = 0.0.0.0 ] && hostname || echo "$listen"):$port   (data: $data, stop with Ctrl-C)"

# A signal interrupts the first wait; the second one waits for the database to be put away.
status=0
wait "$web" || status=$?
while kill -0 "$web" 2>/dev/null; do
    wait "$web" || status=$?
done
case $status in 130 | 143) status=0 ;; esac
exit "$status"
