#!/usr/bin/env bash
# Saves the database and the other files of a data folder (keys, archive) into one file, whether WeldTrace runs or not.
# The private database is dumped. Of a server of your own a base backup is taken, with the write-ahead log that belongs to it.
set -euo pipefail

usage="deploy/backup.sh --data DIR [--server CONNECTION] --to FILE.tar.gz"
data="" to="" server=""
while [ $# -gt 1 ]; do
    case $1 in
        --data) data=$(realpath -m -- "$2") ;;
        --server) server=$2 ;;
        --to) to=$(realpath -m -- "$2") ;;
        *) echo "$usage" >&2 && exit 2 ;;
    esac
    shift 2
done
[ $# -eq 0 ] && [ -n "$data" ] && [ -n "$to" ] || { echo "$usage" >&2 && exit 2; }

# shellcheck source=deploy/private-cluster.sh
. "$(dirname "$0")/private-cluster.sh"
[ -d "$data" ] || fail "There is no folder $data."
[ -n "$server" ] || [ -f "$data/cluster/PG_VERSION" ] || fail "There is no WeldTrace database in $data. Name a server of your own with --server."
[ ! -e "$to" ] || fail "$to exists already; backups are never overwritten."
[ -d "$(dirname "$to")" ] || fail "There is no folder $(dirname "$to")."
find_programs
choose_account

dump_private_database() {
    if hold_folder; then
        start_cluster "$data/cluster"
    fi
    [ -f "$data/cluster/postmaster.pid" ] || fail "WeldTrace is starting or stopping just now; try again in a moment."
    read_address "$data/cluster"
    "$programs/pg_dump" --format custom --file "$work/content/database.dump" "$database"
}

copy_server() {
    "$programs/pg_basebackup" --dbname "$server" --pgdata "$work/content/base" --format tar --wal-method stream \
        --checkpoint fast --manifest-checksums SHA256 --no-password ||
        fail "The server gave no base backup. Its user needs REPLICATION, and pg_hba.conf a line for it; put the password into ~/.pgpass or PGPASSWORD."
}

# These change while WeldTrace runs. What is whole in them stays as it is: it got its name, or the note beside it, when it was. Of what
# is not whole a piece may be saved; nobody takes it for a log, since a push goes on from its length and is held to its SHA-256.
changing=(archive arrivals checkpoints pictures uploads)

copy_changing() {
    local folder codes
    for folder in "${changing[@]}"; do
        [ -d "$data/$folder" ] || continue
        codes=(0 0)
        tar -C "$data" -cf - "./$folder" 2>"$work/said" | tar -C "$work/content/files" -xf - || codes=("${PIPESTATUS[@]}")
        if [ "${codes[0]}" -gt 1 ] || [ "${codes[1]}" -ne 0 ]; then
            cat "$work/said" >&2
            fail "The folder $data/$folder could not be saved."
        elif [ "${codes[0]}" -eq 1 ]; then
            echo "Files of $folder came, grew or went while they were saved. What was whole before is saved whole."
        fi
    done
}

umask 077
work=$(mktemp -d "$to.XXXXXX")
trap 'stop_cluster; rm -rf "$work"' EXIT
mkdir "$work/content"
if [ -n "$server" ]; then
    copy_server
else
    dump_private_database
fi

mkdir "$work/content/files"
tar -C "$data" --exclude=./cluster --exclude=./cluster.new --exclude=./app.lock --exclude=./histories \
    --exclude='./db-password*' --exclude='./app-password*' "${changing[@]/#/--exclude=./}" -cf - . |
    tar -C "$work/content/files" -xf -
copy_changing
(cd "$work/content" && find . -type f ! -name SHA256SUMS -print0 | sort -z | xargs -0 sha256sum >SHA256SUMS)
tar -C "$work/content" -czf "$work/backup" .
sync "$work/backup"
mv --no-clobber "$work/backup" "$to"
echo "Saved $data to $to ($(du -h "$to" | cut -f 1)). It holds keys: keep it where only you can read it."
