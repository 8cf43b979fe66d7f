#!/bin/sh
# Renders the journal's pictures. Usage: render.sh WORK_FOLDER [SCENE...]   (no scene: all of pictures.txt)
# Needs povray, ImageMagick and exiftool. DRAFT=1 makes half-size, quick pictures in WORK_FOLDER only.
set -eu
scenes=$(cd "$(dirname "$0")" && pwd)
work=$1
shift
mkdir -p "$work/sheets"
[ -f "$work/sheets/lettering.png" ] || sh "$scenes/masks.sh" "$work/sheets"

# A camera's hand on it: a curve, falling-off corners, grain.
develop() { # PNG JPEG QUALITY
  size=$(identify -format '%wx%h' "$1")
  convert "$1" -sigmoidal-contrast 3.2x46% -modulate 100,96 \
    \( -size "$size" radial-gradient:white-gray62 \) -compose multiply -composite \
    \( -size "$size" xc:gray50 -seed 11 -attenuate .32 +noise Gaussian -colorspace Gray -blur 0x.5 \) -compose overlay -composite \
    -unsharp 0x.8+.5+.02 -sampling-factor 4:2:0 -quality "$3" -strip "$2"
}

picture() { # SCENE TARGET WIDTH HEIGHT TAKEN OFFSET ORIENTATION
  w=$3 h=$4 aa='+A0.25 +AM2 +R2'
  if [ -n "${DRAFT:-}" ]; then w=$((w/2)) h=$((h/2)) aa='+A0.4 +AM2 +R1'; fi
  (cd "$work" && nice povray +L"$scenes" +Lsheets +I"$scenes/$1.pov" +O"$work/$1.png" +W$w +H$h -D $aa \
    ${DRAFT:+Declare=Blur_Samples=7} >"$work/$1.log" 2>&1) || { grep -A6 -E 'Error' "$work/$1.log"; return 1; }
  develop "$work/$1.png" "$work/$1.jpg" 82
  [ -z "${DRAFT:-}" ] || return 0
  for quality in 78 74 70 66; do
    [ "$(wc -c < "$work/$1.jpg")" -gt 350000 ] || break
    develop "$work/$1.png" "$work/$1.jpg" $quality
  done
  case $7 in
    6) mogrify -rotate 270 "$work/$1.jpg" ;;
    8) mogrify -rotate 90 "$work/$1.jpg" ;;
  esac
  exiftool -q -overwrite_original -DateTimeOriginal="$5" -CreateDate="$5" -OffsetTimeOriginal="$6" \
    -Orientation#="$7" "$work/$1.jpg"
  mkdir -p "$(dirname "$scenes/../$2")"
  mv "$work/$1.jpg" "$scenes/../$2"
}

grep -v '^#' "$scenes/pictures.txt" | while IFS='|' read -r scene target width height taken offset turn; do
  case " ${*:-$scene} " in *" $scene "*) echo "$scene"; picture "$scene" "$target" "$width" "$height" "$taken" "$offset" "$turn" || echo "failed: $scene" ;; esac
done
