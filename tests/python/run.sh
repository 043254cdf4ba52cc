#!/usr/bin/env bash
# Builds the Python package into target/venv and tests it. Takes no arguments; the last line is pytest's closing line.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
venv=$root/target/venv
tools='maturin==1.16.0 pytest==9.2.0 mypy==2.4.1 hypothesis==6.170.17 ezdxf==1.4.5 shapely==2.2.0 jsonschema==4.26.0'
cd "$root"

if [ ! -x "$venv/bin/python" ]; then
    python3 -m venv "$venv"
fi
# Installed only when the list differs, so that a warm run asks no registry.
if [ "$(cat "$venv/tools" 2>/dev/null || true)" != "$tools" ]; then
    # shellcheck disable=SC2086
    "$venv/bin/pip" install --quiet --disable-pip-version-check $tools
    echo "$tools" >"$venv/tools"
fi

export VIRTUAL_ENV=$venv PATH=$venv/bin:$PATH PYO3_PYTHON=$venv/bin/python
wheels=$root/target/python-wheels
rm -rf "$wheels"
maturin build --quiet --locked --profile dev --manifest-path bindings-python/Cargo.toml --interpreter "$venv/bin/python" --out "$wheels"
pip install --quiet --disable-pip-version-check --no-deps --no-index --force-reinstall "$wheels"/seamwright-*.whl

# Run from elsewhere, so that the installed package is tested and not the source folder.
cd "$root/target"
exec python -m pytest -rs -p no:cacheprovider "$root/tests/python"
