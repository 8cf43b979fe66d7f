# Where the faces that the drawings and papers use lie on this machine. To be read by the other scripts.
# face FAMILY STYLE prints the file of that face, as fontconfig knows it; without it nothing goes on.
face() {
  file=$(fc-list -f '%{file}\n' "$1:style=$2" | grep -E '[.](otf|ttf)$' | sort | head -n 1)
  [ -n "$file" ] || { echo "face not found: $1 $2 (README.md names the packages)" >&2; exit 1; }
  printf '%s' "$file"
}
