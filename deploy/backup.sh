#!/usr/bin/env bash
# Saves the private database and the other files of a data folder (keys) into one file, whether WeldTrace runs or not.
# For a PostgreSQL server of your own see deploy/README.md.
set -euo pipefail

usage="deploy/backup.sh --data DIR --to FILE.tar.gz"
data="" to=""
while [ $# -gt 1 ]; do
    case $1 in
        --data) data=$(realpath -m -- "$2") ;;
        --to) to=$(realpath -m -- "$2") ;;
        *) echo "$usage" >&2 && exit 2 ;;
    esac
    shift 2
done
[ $# -eq 0 ] && [ -n "$data" ] && [ -n "$to" ] || { echo "$usage" >&2 && exit 2; }

# shellcheck source=deploy/private-cluster.sh
. "$(dirname "$0")/private-cluster.sh"
[ -f "$data/cluster/PG_VERSION" ] || fail "There is no WeldTrace database in $data."
[ ! -e "$to" ] || fail "$to exists already; backups are never overwritten."
[ -d "$(dirname "$to")" ] || fail "There is no folder $(dirname "$to")."
find_programs
choose_account

umask 077
work=$(mktemp -d "$to.XXXXXX")
trap 'stop_cluster; rm -rf "$work"' EXIT
if hold_folder; then
    start_cluster "$data/cluster"
fi
[ -f "$data/cluster/postmaster.pid" ] || fail "WeldTrace is starting or stopping just now; try again in a moment."
read_address "$data/cluster"

mkdir "$work/content"
"$programs/pg_dump" --format custom --file "$work/content/database.dump" "$database"
mkdir "$work/content/files"
tar -C "$data" --exclude=./cluster --exclude=./cluster.new --exclude=./app.lock --exclude=./histories \
    --exclude='./db-password*' --exclude='./app-password*' -cf - . | tar -C "$work/content/files" -xf -
(cd "$work/content" && find . -type f ! -name SHA256SUMS -print0 | sort -z | xargs -0 sha256sum >SHA256SUMS)
tar -C "$work/content" -czf "$work/backup" .
sync "$work/backup"
mv --no-clobber "$work/backup" "$to"
echo "Saved $data to $to ($(du -h "$to" | cut -f 1)). It holds keys: keep it where only you can read it."
