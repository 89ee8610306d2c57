#!/usr/bin/env bash
# Says how to get the .NET SDK when it is missing or too old. The version is the one in global.json.
set -euo pipefail
cd "$(dirname "$0")/.."

wanted=$(sed -n 's/.*"version": *"\([0-9]*\.[0-9]*\).*/\1/p' global.json | head -n 1)
if ! command -v dotnet >/dev/null; then
    found="dotnet was not found"
elif ! dotnet --version >/dev/null 2>&1; then
    found="the installed one is not it: $(dotnet --list-sdks | tr '\n' ';')"
else
    exit 0
fi
echo "WeldTrace is built with the .NET SDK $wanted; $found" >&2
echo "Debian 12: add Microsoft's package feed as https://learn.microsoft.com/dotnet/core/install/linux-debian describes," >&2
echo "then run: apt-get install dotnet-sdk-$wanted" >&2
exit 1
