# Debian packages, for cli/start.sh and tests/run.sh, which read this file with `.`; POSIX sh.

# What building the program takes.
# shellcheck disable=SC2034
program_packages='g++ cmake ninja-build ccache pkg-config libboost-graph-dev nlohmann-json3-dev libcli11-dev libfmt-dev
libexpected-dev librange-v3-dev libsqlitecpp-dev libsqlite3-dev coinor-libcbc-dev libcsv-dev libutf8proc-dev libical-dev'

# What the tests and the benchmarks take on top of it.
# shellcheck disable=SC2034
test_packages='python3 python3-jsonschema catch2 librapidcheck-dev libglpk-dev libbenchmark-dev chromium'

# Those of the packages named that are not installed, one a line.
missing_packages() {
    for package in "$@"; do
        status=$(dpkg-query -W -f '${db:Status-Status}\n' "$package" 2>/dev/null | sort -u)
        case $status in
            installed) ;;
            *) printf '%s\n' "$package" ;;
        esac
    done
}

# Installs those of the packages named that are missing; ends the script with status 1 where that cannot be done.
need_packages() {
    if ! command -v dpkg-query >/dev/null 2>&1; then
        echo "Packages: this is no Debian system; going on, and taking these (as Debian names them) to be there: $*"
        return 0
    fi
    missing=$(missing_packages "$@" | tr '\n' ' ')
    missing=${missing% }
    if [ -z "$missing" ]; then
        echo "Packages: nothing is missing."
        return 0
    fi
    if [ "$(id -u)" -ne 0 ]; then
        echo "Packages: missing. Install them as root, then run this again:" >&2
        echo "    apt-get update && apt-get install -y --no-install-recommends $missing" >&2
        exit 1
    fi
    echo "Packages: installing $missing."
    export DEBIAN_FRONTEND=noninteractive
    if ! apt-get -qq update; then
        echo "Packages: apt-get update failed." >&2
        exit 1
    fi
    # Package names hold no spaces: the words are meant to be split.
    # shellcheck disable=SC2086
    if ! apt-get -qq install -y --no-install-recommends $missing >/dev/null; then
        echo "Packages: apt-get could not install $missing." >&2
        exit 1
    fi
}
