#!/bin/sh
# Installs what is missing, builds everything with the tests and the benchmarks, runs all tests, and ends with the counts.
#
#     sh tests/run.sh               in build/tests, optimised
#     sh tests/run.sh --sanitize    in build/sanitize, under the address and undefined-behaviour sanitizers
#
# The status is 0 where every test that ran passed and at least one did.
set -eu
cd "$(dirname "$0")/.."
. tests/packages.sh

sanitize=no
case ${1-} in
    '') ;;
    --sanitize) sanitize=yes ;;
    *)
        echo "usage: sh tests/run.sh [--sanitize]" >&2
        exit 2
        ;;
esac

# shellcheck disable=SC2086
need_packages $program_packages $test_packages

if [ "$sanitize" = yes ]; then
    build=build/sanitize
    echo "Configuring $build."
    cmake --preset sanitize --log-level=WARNING >/dev/null
else
    build=build/tests
    echo "Configuring $build."
    cmake -S . -B $build -G Ninja -DCMAKE_BUILD_TYPE=Release -DSAMEBASE_TESTS=ON -DSAMEBASE_BENCHMARKS=ON --log-level=WARNING >/dev/null
fi

echo "Building everything (several minutes the first time)."
cmake --build $build -j"$(nproc)"

echo "Running the tests."
rm -f $build/junit.xml
ran=0
ctest --test-dir $build -j"$(nproc)" --output-on-failure --output-junit junit.xml || ran=$?
if [ ! -f $build/junit.xml ]; then
    echo "ctest wrote no $build/junit.xml." >&2
    echo "0 passed, 0 failed"
    exit 1
fi
sh tests/count.sh $build/junit.xml || exit 1
[ "$ran" -eq 0 ]
