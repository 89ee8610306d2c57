#!/usr/bin/env bash
# The fuzzing of the bundle reader and of the forms with as many as a night has time for (about 10 minutes for a million bundles and
# 4 for a million forms, on two cores); tests/run.sh takes 20,000 and 100,000.
set -euo pipefail
cd "$(dirname "$0")/.."

export WELDTRACE_FUZZ_BUNDLES=${WELDTRACE_FUZZ_BUNDLES:-1000000}
export WELDTRACE_FUZZ_FORMS=${WELDTRACE_FUZZ_FORMS:-1000000}
configuration=${CONFIGURATION:-Release}

fuzz() {
    dotnet build "tests/$1" --configuration "$configuration" --nologo --verbosity quiet
    dotnet "tests/$1/bin/$configuration/net10.0/$1.dll" -class "$2" -showliveoutput
}

fuzz WeldTrace.Verify.Tests '*BundleFuzzTests'
fuzz WeldTrace.Web.Tests '*FormFuzzTests'
