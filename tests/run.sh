#!/usr/bin/env bash
# Checks the format, builds, and runs every test of the repository. The last line is "N passed, N failed".
# The database is PostgreSQL from this machine's packages, or a server named in WELDTRACE_TEST_DATABASE, or a container
# of the image named in WELDTRACE_TEST_IMAGE.
set -euo pipefail
cd "$(dirname "$0")/.."

configuration=${CONFIGURATION:-Release}
packages=(chromium-headless-shell openssl poppler-utils qpdf fonts-dejavu-core libicu72 tzdata r-base-core r-cran-survival r-cran-mass python3-scipy)
if [ -z "${WELDTRACE_TEST_DATABASE:-}" ] && [ -z "${WELDTRACE_TEST_IMAGE:-}" ]; then
    packages+=(postgresql)
fi

./deploy/require-sdk.sh
./deploy/install-packages.sh "${packages[@]}"
dotnet tool restore >/dev/null

echo "== format"
dotnet csharpier check .

echo "== build ($configuration)"
dotnet restore WeldTrace.sln --verbosity quiet
# One compiler for all projects, where the environment would start one for each; it is sent away before the tests.
dotnet build WeldTrace.sln --no-restore --configuration "$configuration" --nologo --verbosity quiet -warnaserror -p:UseSharedCompilation=true
dotnet build-server shutdown >/dev/null

echo "== database structure"
dotnet ef migrations has-pending-model-changes --no-build --configuration "$configuration" --project src/WeldTrace.Persistence

echo "== tests"
# Each test class has a database of hundreds of files; making and deleting those on a disk takes half of the time of all tests.
room=$(df --output=avail /dev/shm 2>/dev/null | tail -n 1) || true
if [ -z "${WELDTRACE_TEST_FOLDER:-}" ] && [ "${room:-0}" -gt $((6 << 20)) ]; then
    export WELDTRACE_TEST_FOLDER=/dev/shm
fi
# Nothing here runs long enough to earn back what the just-in-time compiler measures for a second, better version.
export DOTNET_TieredPGO=0 DOTNET_EnableWriteXorExecute=0
log=$(mktemp)
trap 'rm -f "$log"' EXIT
status=0
dotnet test --solution WeldTrace.sln --no-build --configuration "$configuration" --no-progress --no-ansi "$@" 2>&1 |
    tee "$log" || status=$?

echo "== check tables, recomputed with R and scipy"
checks=$(mktemp)
trap 'rm -f "$log" "$checks"' EXIT
recomputed=0
./tests/checks/run.sh 2>&1 | tee "$checks" || recomputed=$?

count() { awk -v key="$1:" '$1 == key { n += $2 } END { print n + 0 }' "$log"; }
passed=$(count succeeded) failed=$(count failed) skipped=$(count skipped) broken=$(count error)
if [ "$skipped" -gt 0 ]; then
    echo "$skipped skipped: a test that does not run proves nothing"
fi
if [ "$broken" -gt 0 ]; then
    echo "$broken test projects ran no test or did not come to their end"
fi
read -r agree differ < <(awk '/ agree, .* differ$/ { a = $1; d = $3 } END { print a + 0, d + 0 }' "$checks")
if [ "$recomputed" -ne 0 ] && [ "$differ" -eq 0 ]; then
    echo "the check tables were not recomputed to their end"
    differ=1
fi
# Told once more at the end, since a long log is often cut at its head.
grep -E -A 15 '^ *failed [A-Za-z]' "$log" || true
passed=$((passed + agree)) failed=$((failed + skipped + broken + differ))
if [ "$status" -ne 0 ] && [ "$failed" -eq 0 ]; then
    echo "dotnet test ended with status $status"
    failed=1
fi
if [ "$passed" -eq 0 ] || [ "$failed" -gt 0 ]; then
    [ "$status" -ne 0 ] || status=1
fi
echo "$passed passed, $failed failed"
exit "$status"
