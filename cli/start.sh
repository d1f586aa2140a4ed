#!/bin/sh
# Installs what is missing, builds samebase, writes the demo kitchen, and asks it what else can be made from its beef mince.
# May be run again at any time; the demo kitchen is written afresh each time, and nothing outside build/ is touched.
set -eu
cd "$(dirname "$0")/.."
. tests/packages.sh

# shellcheck disable=SC2086
need_packages $program_packages

echo "Configuring build/start."
cmake -S . -B build/start -G Ninja -DCMAKE_BUILD_TYPE=Release -DSAMEBASE_TESTS=OFF -DSAMEBASE_BENCHMARKS=OFF --log-level=WARNING >/dev/null

echo "Building samebase (a few minutes the first time)."
cmake --build build/start --target samebase -j"$(nproc)"
samebase=build/start/cli/samebase

echo "Writing the demo kitchen into build/demo."
rm -rf build/demo
"$samebase" demo build/demo >/dev/null

echo "Asking: $samebase --kitchen build/demo else beef mince"
echo
exec "$samebase" --kitchen build/demo else beef mince
