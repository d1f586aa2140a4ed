#!/bin/sh
# Installs what is missing, builds everything with the tests and the benchmarks, runs all tests, and ends with the counts.
#
#     sh tests/run.sh               in build/tests, optimised
#     sh tests/run.sh --sanitize    in build/sanitize, under the address and undefined-behaviour sanitizers
#     sh tests/run.sh --long        with fresh seeds, ten times the cases of each property, ten years of a household, and the
#                                   tests that take long
#
# Without --long all seeds are fixed: a clean checkout gives the same result twice. With it the seeds are printed at the
# start and the end, and a failure says how to repeat it. RC_PARAMS and SAMEBASE_SEED, where they are set, stand.
#
# The status is 0 where every test that ran passed and at least one did.
set -eu
cd "$(dirname "$0")/.."
. tests/packages.sh

sanitize=no
long=no
for option; do
    case $option in
        --sanitize) sanitize=yes ;;
        --long) long=yes ;;
        *)
            echo "usage: sh tests/run.sh [--sanitize] [--long]" >&2
            exit 2
            ;;
    esac
done

# A line before each step, with the time since the start.
started=$(date +%s)
step() {
    now=$(date +%s)
    echo "[$(((now - started) / 60)) min] $*"
}

# shellcheck disable=SC2086
need_packages $program_packages $test_packages

seeds=
of_run=
if [ "$long" = yes ]; then
    of_run="-C long"
    fresh=$(od -An -N4 -tu4 /dev/urandom | tr -d ' ')
    RC_PARAMS=${RC_PARAMS-"seed=$fresh max_success=1000"}
    SAMEBASE_SEED=${SAMEBASE_SEED-$fresh}
    export RC_PARAMS SAMEBASE_SEED
    seeds="RC_PARAMS='$RC_PARAMS' SAMEBASE_SEED=$SAMEBASE_SEED"
    echo "Seeds of this run: $seeds"
fi

if [ "$sanitize" = yes ]; then
    build=build/sanitize
    step "Configuring $build."
    cmake --preset sanitize --log-level=WARNING >/dev/null
else
    build=build/tests
    step "Configuring $build."
    cmake -S . -B $build -G Ninja -DCMAKE_BUILD_TYPE=Release -DSAMEBASE_TESTS=ON -DSAMEBASE_BENCHMARKS=ON --log-level=WARNING >/dev/null
fi

step "Building everything (several minutes the first time)."
cmake --build $build -j"$(nproc)"

# The tests make many small files and throw them away: in memory, where there is room.
memory=/dev/shm
if [ -z "${TMPDIR-}" ] && [ -w $memory ] && [ "$(df -Pk $memory | awk 'NR == 2 { print $4 }')" -gt 2000000 ]; then
    TMPDIR=$(mktemp -d $memory/samebase-tests-XXXXXX)
    chmod 755 "$TMPDIR"  # some tests become another user, who must be able to look in
    export TMPDIR
    trap 'rm -rf "$TMPDIR"' EXIT
fi

step "Running the tests, the longest first."
rm -f $build/junit.xml
ran=0
# shellcheck disable=SC2086
ctest --test-dir $build $of_run -j"$(nproc)" --output-on-failure --output-junit junit.xml || ran=$?
if [ ! -f $build/junit.xml ]; then
    echo "ctest wrote no $build/junit.xml." >&2
    echo "0 passed, 0 failed"
    exit 1
fi
if [ "$long" = yes ]; then
    step "Living ten years (hours)."
    python3 tests/soak/soak_test.py $build/cli/samebase data --days 3650 --seed "$SAMEBASE_SEED" || ran=1
fi
step "Done."
if [ -n "$seeds" ]; then
    echo "To repeat this run: $seeds sh tests/run.sh --long"
fi
sh tests/count.sh $build/junit.xml || exit 1
[ "$ran" -eq 0 ]
