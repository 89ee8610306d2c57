# Sourced by backup.sh and restore.sh: the private PostgreSQL cluster in a data folder, as WeldTrace itself runs it.
# shellcheck shell=bash

database=weldtrace owner=weldtrace_owner application_role=weldtrace_app
account=() cluster_started=""

fail() {
    echo "$1" >&2
    exit 2
}

# The programs of the cluster's version, or of the highest one for a new cluster.
find_programs() {
    local version=""
    [ ! -f "$data/cluster/PG_VERSION" ] || version=$(cat "$data/cluster/PG_VERSION")
    programs=$(printf '%s\n' /usr/lib/postgresql/${version:-*}/bin | sort -V | tail -n 1)
    [ -x "$programs/pg_restore" ] || fail "PostgreSQL ${version:-} is not installed: apt-get install postgresql${version:+-$version}"
}

# PostgreSQL refuses root: root steps down to the account that owns the cluster.
choose_account() {
    [ "$(id -u)" -eq 0 ] || return 0
    local ids
    if [ -d "$data/cluster" ]; then
        ids=$(stat -c '%u %g' "$data/cluster")
    else
        ids="$(id -u postgres 2>/dev/null || id -u nobody) $(id -g postgres 2>/dev/null || id -g nobody)"
    fi
    account=(setpriv "--reuid=${ids% *}" "--regid=${ids#* }" --clear-groups --inh-caps=-all --no-new-privs --reset-env)
}

# Gives files and folders to the account that runs the server.
give_to_server() {
    [ "$(id -u)" -eq 0 ] || return 0
    chown -R "$(sed 's/.*--reuid=\([0-9]*\) --regid=\([0-9]*\).*/\1:\2/' <<<"${account[*]}")" "$@"
}

# Takes the lock that WeldTrace holds while it runs.
hold_folder() {
    exec 9>>"$data/app.lock"
    chmod 600 "$data/app.lock"
    flock --nonblock 9
}

start_cluster() {
    [ ${#1} -le 90 ] || fail "The path $1 is too long for a socket. Use a shorter one, or make the backup while WeldTrace runs."
    # The server must not inherit the lock.
    (cd / && "${account[@]}" "$programs/pg_ctl" --pgdata "$1" --silent --wait --log /dev/null \
        --options "-c listen_addresses= -c unix_socket_directories='$1' -c port=5432" start) 9>&- </dev/null >/dev/null ||
        fail "The database in $1 did not start. Is there space on the disk, and does nothing else use it?"
    cluster_started=$1
}

stop_cluster() {
    [ -n "$cluster_started" ] || return 0
    (cd / && "${account[@]}" "$programs/pg_ctl" --pgdata "$cluster_started" --silent --wait --mode fast stop)
    cluster_started=""
}

# Host and port of a server that runs, from the file it keeps: line 4 is the port, line 5 the folder of its socket.
read_address() {
    PGPORT=$(sed -n 4p "$1/postmaster.pid") PGHOST=$(sed -n 5p "$1/postmaster.pid")
    PGHOST=${PGHOST:-127.0.0.1} PGUSER=$owner PGPASSWORD=$(cat "$data/db-password")
    export PGHOST PGPORT PGUSER PGPASSWORD
}
