#!/usr/bin/env bash
# Prints the survey form on both papers and in both systems of units, and fails unless it has a page for the site and
# one for each run. Needs chromium, and pdfinfo of poppler-utils.
#   .ci/form-pages.sh PROGRAM
set -euo pipefail
cd "$(dirname "$0")/.."
program=$1
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
failed=0
for units in us si; do
    for paper in letter a4; do
        for runs in 1 4; do
            "$program" form --runs "$runs" --paper "$paper" --units "$units" > "$folder/form.html"
            rm -f "$folder/form.pdf"
            chromium --headless --no-sandbox --disable-gpu --disable-quic --no-first-run \
                --disable-background-networking --disable-component-update --disable-sync \
                --user-data-dir="$folder/profile" --no-pdf-header-footer --print-to-pdf="$folder/form.pdf" \
                "file://$folder/form.html" > /dev/null 2>&1 || true
            pages=$(pdfinfo "$folder/form.pdf" 2> /dev/null | awk '/^Pages:/ { print $2 }')
            if [ "$pages" != $((runs + 1)) ]; then
                echo "WRONG form of $runs runs, $units, $paper: ${pages:-no} pages"
                failed=1
            fi
        done
    done
done
[ "$failed" = 0 ] && echo "the form has a page for the site and one for each run"
exit "$failed"
