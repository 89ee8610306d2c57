#!/usr/bin/env bash
# Recomputes the statistical check tables of the computation library with scipy and R and compares. The last line is
# "N agree, N differ"; the status is 0 when all agree. Needs r-base-core, r-cran-survival, r-cran-mass and python3-scipy.
set -euo pipefail
cd "$(dirname "$0")"

log=$(mktemp)
trap 'rm -f "$log"' EXIT
status=0
run() {
    echo "-- $*"
    "$@" 2>&1 | tee -a "$log" || status=1
}
# The Python of Debian, which has its scipy, whatever else stands in the path.
export PYTHONDONTWRITEBYTECODE=1
run /usr/bin/python3 tool_life.py
run /usr/bin/python3 samples.py
run Rscript --vanilla statistics.R

awk '/ agree, .* differ$/ { agree += $1; differ += $3 } END { print agree + 0 " agree, " differ + 0 " differ" }' "$log"
exit "$status"
