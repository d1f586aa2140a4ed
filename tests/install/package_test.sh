#!/bin/sh
# The Debian package on a fresh machine: made with cpack, installed with apt in a system that mmdebstrap makes, and asked there.
# Part of the long run: it needs the network, and to be root.
#
#     sh package_test.sh BUILD_FOLDER
set -eu
build=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
command -v mmdebstrap >/dev/null || apt-get -qq install -y --no-install-recommends mmdebstrap >/dev/null

(cd "$build" && cpack -G DEB -B "$work" >/dev/null)
mv "$work"/samebase_*.deb "$work/samebase.deb"
# Within mmdebstrap, because it removes the lists of packages at its end.
mmdebstrap --quiet --variant=apt --include=man-db --customize-hook="copy-in $work/samebase.deb /tmp" \
    --customize-hook='chroot "$1" apt-get -qq install -y --no-install-recommends /tmp/samebase.deb >/dev/null' \
    bookworm "$work/system"
# With /proc, as on any machine that runs: by it the program finds what is installed beside it.
in_it() {
    unshare -m sh -c 'mount --bind /proc "$0/proc" && exec chroot "$0" env LC_ALL=C.UTF-8 HOME=/root "$@"' "$work/system" "$@"
}
in_it samebase demo /root/kitchen
in_it samebase --kitchen /root/kitchen else beef mince >"$work/answer"
grep -q "beef mince" "$work/answer"
head -5 "$work/answer"
in_it samebase --kitchen /root/kitchen sheet week --ics /root/week.ics
in_it samebase check --data >/dev/null
in_it samebase help safe | head -1
in_it test -s /usr/share/bash-completion/completions/samebase
in_it man --warnings samebase 2>"$work/warnings" | grep -q "lunches"
test ! -s "$work/warnings" || { cat "$work/warnings"; exit 1; }
echo "The package works on a fresh system."
