#!/usr/bin/env bash
# What a night has time for, on two cores: the bundle reader and the forms with a million hostile inputs each (about 10 and 4 minutes;
# tests/run.sh takes 20,000 and 100,000), each form of the running site with 50 hostile posts (there 2), and application and database killed 200 times while runs are logged (up to an hour; there 6 times).
set -euo pipefail
cd "$(dirname "$0")/.."

export WELDTRACE_FUZZ_BUNDLES=${WELDTRACE_FUZZ_BUNDLES:-1000000}
export WELDTRACE_FUZZ_FORMS=${WELDTRACE_FUZZ_FORMS:-1000000}
export WELDTRACE_HOSTILE_SENDS=${WELDTRACE_HOSTILE_SENDS:-50}
export WELDTRACE_KILL_ROUNDS=${WELDTRACE_KILL_ROUNDS:-100}
configuration=${CONFIGURATION:-Release}

run() {
    dotnet build "tests/$1" --configuration "$configuration" --nologo --verbosity quiet
    dotnet "tests/$1/bin/$configuration/net10.0/$1.dll" -class "$2" -showliveoutput
}

run WeldTrace.Verify.Tests '*BundleFuzzTests'
run WeldTrace.Web.Tests '*FormFuzzTests'
run WeldTrace.Web.Tests '*FormAccessTests'
run WeldTrace.Web.Tests '*CrashTests'
