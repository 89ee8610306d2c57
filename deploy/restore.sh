#!/usr/bin/env bash
# Makes a data folder from a backup. The folder must be new or empty; WeldTrace makes new database passwords for it.
set -euo pipefail

usage="deploy/restore.sh --from FILE.tar.gz --data DIR"
data="" from=""
while [ $# -gt 1 ]; do
    case $1 in
        --data) data=$(realpath -m -- "$2") ;;
        --from) from=$(realpath -m -- "$2") ;;
        *) echo "$usage" >&2 && exit 2 ;;
    esac
    shift 2
done
[ $# -eq 0 ] && [ -n "$data" ] && [ -n "$from" ] || { echo "$usage" >&2 && exit 2; }

# shellcheck source=deploy/private-cluster.sh
. "$(dirname "$0")/private-cluster.sh"
[ -f "$from" ] || fail "There is no backup $from."
[ ! -e "$data" ] || [ -z "$(ls -A "$data")" ] || fail "$data is not empty; a restore never overwrites. Name a new folder."
find_programs
choose_account

umask 077
mkdir -p "$data"
[ "$(id -u)" -ne 0 ] || chmod 711 "$data"
"${account[@]}" sh -c 'cd -- "$1"' sh "$data" 2>/dev/null ||
    fail "The database server's account cannot enter $data. Choose a folder that is not below a private one, for example /var/lib/weldtrace."
hold_folder || fail "$data is in use."
work=$data/cluster.new
trap 'stop_cluster; rm -rf "$data/restoring" "$work" "$data/initdb-password"' EXIT

mkdir "$data/restoring"
tar -C "$data/restoring" --no-same-owner -xzf "$from" || fail "$from is damaged or no backup."
(cd "$data/restoring" && sha256sum --check --strict --quiet SHA256SUMS) || fail "$from is damaged: a file in it has another SHA-256 sum than when it was saved."

od -An -N32 -tx1 /dev/urandom | tr -d ' \n' >"$data/db-password"
cp "$data/db-password" "$data/initdb-password"
mkdir "$work"
if [ "$(id -u)" -eq 0 ]; then
    chown "$(sed 's/.*--reuid=\([0-9]*\) --regid=\([0-9]*\).*/\1:\2/' <<<"${account[*]}")" "$work" "$data/initdb-password"
fi
(cd / && "${account[@]}" "$programs/initdb" -D "$work" -U "$owner" -A scram-sha-256 -E UTF8 --locale=C.UTF-8 \
    --data-checksums --pwfile="$data/initdb-password" >/dev/null)
start_cluster "$work"
read_address "$work"
"$programs/psql" --quiet --no-psqlrc --set ON_ERROR_STOP=1 --dbname postgres \
    --command "CREATE DATABASE $database" --command "CREATE ROLE $application_role"
"$programs/pg_restore" --exit-on-error --dbname "$database" "$data/restoring/database.dump"
stop_cluster

cp -a "$data/restoring/files/." "$data/"
[ "$(id -u)" -ne 0 ] || chmod 711 "$data"
mv "$work" "$data/cluster"
echo "Restored $from into $data. Start it with: deploy/start.sh --data $data"
