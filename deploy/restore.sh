#!/usr/bin/env bash
# Makes a data folder from a backup. The folder must be new or empty; WeldTrace makes new database passwords for it.
# From a base backup of a server it also makes that server's own folder, which goes on with the archived write-ahead log when it is started.
set -euo pipefail

usage="deploy/restore.sh --from FILE.tar.gz --data DIR [--cluster DIR [--wal DIR] [--until TIME]]"
data="" from="" cluster="" wal="" until=""
while [ $# -gt 1 ]; do
    case $1 in
        --data) data=$(realpath -m -- "$2") ;;
        --from) from=$(realpath -m -- "$2") ;;
        --cluster) cluster=$(realpath -m -- "$2") ;;
        --wal) wal=$(realpath -m -- "$2") ;;
        --until) until=$2 ;;
        *) echo "$usage" >&2 && exit 2 ;;
    esac
    shift 2
done
[ $# -eq 0 ] && [ -n "$data" ] && [ -n "$from" ] || { echo "$usage" >&2 && exit 2; }
[ -n "$cluster" ] || [ -z "$wal$until" ] || { echo "$usage" >&2 && exit 2; }

# shellcheck source=deploy/private-cluster.sh
. "$(dirname "$0")/private-cluster.sh"
[ -f "$from" ] || fail "There is no backup $from."
[ ! -e "$data" ] || [ -z "$(ls -A "$data")" ] || fail "$data is not empty; a restore never overwrites. Name a new folder."
[ -z "$cluster" ] || [ ! -e "$cluster" ] || [ -z "$(ls -A "$cluster")" ] || fail "$cluster is not empty; a restore never overwrites. Name a new folder."
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

if [ -n "$cluster" ]; then
    [ -d "$data/restoring/base" ] || fail "$from holds a dump of the private database and no base backup of a server; leave out --cluster."
else
    [ -f "$data/restoring/database.dump" ] || fail "$from holds the base backup of a server: name a new folder for that server with --cluster."
fi

restore_private_database() {
    od -An -N32 -tx1 /dev/urandom | tr -d ' \n' >"$data/db-password"
    cp "$data/db-password" "$data/initdb-password"
    mkdir "$work"
    give_to_server "$work" "$data/initdb-password"
    (cd / && "${account[@]}" "$programs/initdb" -D "$work" -U "$owner" -A scram-sha-256 -E UTF8 --locale=C.UTF-8 \
        --data-checksums --pwfile="$data/initdb-password" >/dev/null)
    start_cluster "$work"
    read_address "$work"
    "$programs/psql" --quiet --no-psqlrc --set ON_ERROR_STOP=1 --dbname postgres \
        --command "CREATE DATABASE $database" --command "CREATE ROLE $application_role"
    "$programs/pg_restore" --exit-on-error --dbname "$database" "$data/restoring/database.dump"
    stop_cluster
}

# A value of the server's settings, in quotes.
quote() { printf "'%s'" "${1//\'/\'\'}"; }

restore_server() {
    mkdir -p "$cluster/pg_wal"
    tar -C "$cluster" -xf "$data/restoring/base/base.tar"
    tar -C "$cluster/pg_wal" -xf "$data/restoring/base/pg_wal.tar"
    cp "$data/restoring/base/backup_manifest" "$cluster/"
    chmod 700 "$cluster"
    programs=/usr/lib/postgresql/$(cat "$cluster/PG_VERSION")/bin
    [ -x "$programs/postgres" ] || fail "PostgreSQL $(cat "$cluster/PG_VERSION") is not installed: apt-get install postgresql-$(cat "$cluster/PG_VERSION")"
    "$programs/pg_verifybackup" --quiet "$cluster" || fail "The base backup in $from is damaged."
    if [ -n "$wal" ]; then
        {
            echo "restore_command = $(quote "cp '$wal/%f' '%p'")"
            [ -z "$until" ] || echo "recovery_target_time = $(quote "$until")"
            echo "recovery_target_action = 'promote'"
        } >>"$cluster/postgresql.auto.conf"
        touch "$cluster/recovery.signal"
    fi
    give_to_server "$cluster"
}

if [ -n "$cluster" ]; then
    restore_server
else
    restore_private_database
fi

cp -a "$data/restoring/files/." "$data/"
[ "$(id -u)" -ne 0 ] || chmod 711 "$data"
if [ -n "$cluster" ]; then
    echo "Restored $from into $data and $cluster. Start PostgreSQL $(cat "$cluster/PG_VERSION") on $cluster, then WeldTrace on $data."
else
    mv "$work" "$data/cluster"
    echo "Restored $from into $data. Start it with: deploy/start.sh --data $data"
fi
