#!/bin/sh
# Counts the tests of a JUnit file as ctest writes it, and prints `N passed, N failed` (`, N skipped` where there are any).
# A test that could not be run, because its program is not there, has failed; only one that said so itself, or is disabled, is
# skipped. The status is 0 where none failed and at least one passed.
LC_ALL=C exec awk '
    /^[ \t]*<testcase / {
        if (/ status="run"/) passed++
        else if (/ status="disabled"/) skipped++
        else if (/ status="notrun"/) open = 1
        else failed++
    }
    /^[ \t]*<skipped / && open { if (/ message="SKIP_/) skipped++; else failed++; open = 0 }
    /^[ \t]*<\/testcase>/ && open { failed++; open = 0 }
    END {
        printf "%d passed, %d failed", passed, failed
        if (skipped) printf ", %d skipped", skipped
        printf "\n"
        exit failed > 0 || passed == 0
    }' "$1"
