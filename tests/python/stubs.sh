#!/usr/bin/env bash
# Writes the committed stubs again from the extension itself. Run after a change of the binding; test_stubs.py says when it is due.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
export VIRTUAL_ENV=$root/target/venv PATH=$root/target/venv/bin:$PATH
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
cd "$root/bindings-python"
# The data for the stub sits in the symbols of an unstripped library, so never from a release.
maturin generate-stubs --quiet --locked --features stubs --out "$out"
rm -rf python/seamwright/_seamwright
cp -r "$out/seamwright/_seamwright" python/seamwright/_seamwright
