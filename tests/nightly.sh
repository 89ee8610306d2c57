#!/usr/bin/env bash
# The fuzzing of the bundle reader with as many bundles as a night has time for (about 10 minutes for a million on two cores);
# tests/run.sh takes 20,000.
set -euo pipefail
cd "$(dirname "$0")/.."

export WELDTRACE_FUZZ_BUNDLES=${WELDTRACE_FUZZ_BUNDLES:-1000000}
configuration=${CONFIGURATION:-Release}

dotnet build tests/WeldTrace.Verify.Tests --configuration "$configuration" --nologo --verbosity quiet
dotnet "tests/WeldTrace.Verify.Tests/bin/$configuration/net10.0/WeldTrace.Verify.Tests.dll" -class '*BundleFuzzTests' -showliveoutput
