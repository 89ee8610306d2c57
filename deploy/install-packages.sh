#!/usr/bin/env bash
# Installs the Debian packages named as arguments that are not there yet, as root or through sudo.
set -euo pipefail

missing=()
for package in "$@"; do
    dpkg-query --show --showformat='${db:Status-Status}' "$package" 2>/dev/null | grep -qx installed || missing+=("$package")
done
[ ${#missing[@]} -gt 0 ] || exit 0

if [ "$(id -u)" -eq 0 ]; then
    as_root=()
elif command -v sudo >/dev/null; then
    as_root=(sudo)
else
    echo "These packages are missing: ${missing[*]}. Have an administrator run: apt-get install ${missing[*]}" >&2
    exit 1
fi

echo "Installing: ${missing[*]}"
install() {
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install --yes --no-install-recommends "${missing[@]}"
}
"${as_root[@]}" apt-get update -qq || true
install >/dev/null || {
    echo "apt-get could not install: ${missing[*]}. Its complaint stands above." >&2
    exit 1
}
