#!/usr/bin/env bash
# Prints the client's sheet of every survey below in both systems of units and on both papers, in the fonts at hand
# and in the widest of the usual ones, and fails unless each is exactly one page with its last line on it and every
# word within the paper. Needs chromium, and pdfinfo and pdftotext of poppler-utils.
#   .ci/sheet-pages.sh [PROGRAM]
set -euo pipefail
cd "$(dirname "$0")/.."

for tool in chromium pdfinfo pdftotext; do
  command -v "$tool" > /dev/null || { echo "$tool is missing"; exit 1; }
done
program=${1:-}
if [ -z "$program" ]; then
  cargo build --release --quiet
  program=${CARGO_TARGET_DIR:-target}/release/fencegust
fi
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
fonts=("")
if command -v fc-list > /dev/null && [ -n "$(fc-list "DejaVu Sans")" ]; then fonts+=("DejaVu Sans"); fi

failed=0
wrong() { echo "WRONG $1: $2"; failed=1; }

# The words of a PDF that stand outside its paper.
outside() {
  pdftotext -bbox "$1" - | awk '
    /<page / { split($0, at, "\""); width = at[2]; height = at[4] }
    /<word / { split($0, at, "\"")
      if (at[2] < 0 || at[4] < 0 || at[6] > width || at[8] > height) print $0 }'
}

count=0
for survey in examples/tarnwick-green.toml tests/surveys/*.toml; do
  name=$(basename "$survey" .toml)
  for units in us si; do
    sed -E "s/^units( *)= \"(us|si)\"/units = \"$units\"/" "$survey" > "$folder/survey.toml"
    for paper in letter a4; do
      set +e
      "$program" sheet "$folder/survey.toml" --for client --paper "$paper" --out "$folder/sheet.html" --force
      code=$?
      set -e
      case $code in 0|1|3) ;; *) wrong "$name $units $paper" "ended with $code"; continue ;; esac
      last=$(grep -o 'Survey [0-9a-f]\{16\}, fencegust [0-9.]*' "$folder/sheet.html" | tail -1)
      for font in "${fonts[@]}"; do
        what="$name, $units, $paper${font:+, $font}"
        cp "$folder/sheet.html" "$folder/print.html"
        if [ -n "$font" ]; then sed -i "s/system-ui,sans-serif/'$font'/" "$folder/print.html"; fi
        rm -f "$folder/print.pdf"
        chromium --headless --no-sandbox --disable-gpu --disable-quic --no-first-run \
          --disable-background-networking --disable-component-update --disable-sync \
          --user-data-dir="$folder/profile" --no-pdf-header-footer --print-to-pdf="$folder/print.pdf" \
          "file://$folder/print.html" > /dev/null 2>&1 || true
        if [ ! -s "$folder/print.pdf" ]; then wrong "$what" "was not printed"; continue; fi
        count=$((count + 1))
        pages=$(pdfinfo "$folder/print.pdf" | awk '/^Pages:/ { print $2 }')
        size=$(pdfinfo "$folder/print.pdf" | grep '^Page size:')
        [ "$pages" = 1 ] || wrong "$what" "$pages pages"
        case "$paper" in letter) pattern="612 x 792" ;; *) pattern="59[45][.0-9]* x 84[12]" ;; esac
        [[ $size =~ $pattern ]] || wrong "$what" "$size"
        pdftotext "$folder/print.pdf" "$folder/print.txt"
        if [ -z "$last" ] || ! grep -qF "$last" "$folder/print.txt"; then wrong "$what" "its last line is missing"; fi
        lost=$(outside "$folder/print.pdf")
        [ -z "$lost" ] || wrong "$what" "words outside the paper: $lost"
      done
    done
  done
done
[ "$count" -ge 20 ] || wrong "sheets" "only $count were printed"
[ "$failed" = 0 ] && echo "$count sheets, each on one page"
exit "$failed"
