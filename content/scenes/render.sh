#!/bin/sh
# Renders the journal's pictures. Usage: render.sh WORK_FOLDER [SCENE...]   (no scene: all of pictures.txt)
# Needs povray, ImageMagick and exiftool. DRAFT=1 makes half-size, quick pictures in WORK_FOLDER only; AGAIN=1 develops the last trace anew.
set -eu
scenes=$(cd "$(dirname "$0")" && pwd)
work=$1
shift
mkdir -p "$work/sheets"
[ -f "$work/sheets/temporary-wide.png" ] || { sh "$scenes/masks.sh" "$work/sheets"; sh "$scenes/masks-b.sh" "$work/sheets"; }

# Throws out of focus what is far from the sharp plane, in steps. PNG and its depth.ppm, eye.txt are in $work.
blur() { # SCENE PNG
  [ -f "$work/eye.txt" ] || return 0
  read -r focus lens fog < "$work/eye.txt"
  [ "$(echo "$lens > 0.001" | bc)" = 1 ] || return 0
  size=$(identify -format '%wx%h' "$2") width=${size%x*}
  trace "$1" "$work/depth.ppm" $((width/2)) $((${size#*x}/2)) Declare=Depth=1 +FP16 File_Gamma=1.0 -A || return 1
  # diameter of the blur disc in pixels over 64: lens * width * |1/d - 1/focus|, d = -fog ln(1 - v)
  convert "$work/depth.ppm" -channel R -separate +channel -depth 16 \
    -fx "dd=-$fog*ln(max(1-u,0.0008)); min(1, $lens*$width*abs(1/max(dd,1)-1/$focus)/64)" -blur 0x1 -resize "$size!" "$work/disc.png"
  low=1.2
  for disc in 2 3.5 6 10 16 26 40; do
    # sigma of a disc is a quarter of its diameter, a little more looks right
    convert "$2" -blur "0x$(echo "scale=3; $disc*.28" | bc)" "$work/soft.png"
    convert "$work/disc.png" -level "$(echo "scale=4; $low/.64" | bc)%,$(echo "scale=4; $disc/.64" | bc)%" "$work/where.png"
    convert "$2" "$work/soft.png" "$work/where.png" -compose over -composite "$2.next.png"
    mv "$2.next.png" "$2"
    low=$disc
  done
}

# A camera's hand on it: a curve, falling-off corners, grain.
develop() { # PNG JPEG QUALITY
  size=$(identify -format '%wx%h' "$1")
  convert "$1" -sigmoidal-contrast 2.6x42% -modulate 100,97 \
    \( -size "$size" radial-gradient:white-gray78 \) -compose multiply -composite \
    \( -size "$size" xc:gray50 -seed 11 -attenuate .1 +noise Gaussian -colorspace Gray -blur 0x.6 \) -compose overlay -composite \
    -unsharp 0x.7+.5+.03 -sampling-factor 4:2:0 -quality "$3" -strip "$2"
}

trace() { # SCENE PNG WIDTH HEIGHT OPTIONS...
  name=$1 png=$2 w=$3 h=$4
  shift 4
  (cd "$work" && povray +L"$scenes" +Lsheets +I"$scenes/$name.pov" +O"$png" +W"$w" +H"$h" -D "$@" >"$name.log" 2>&1) ||
    { grep -A6 -E 'Error' "$work/$name.log"; return 1; }
}

picture() { # SCENE TARGET WIDTH HEIGHT TAKEN OFFSET ORIENTATION
  # traced a third larger than it is shown and shrunk; FINE=1 smooths edges while tracing as well
  w=$(($3*4/3)) h=$(($4*4/3)) edges=-A
  [ -z "${FINE:-}" ] || edges='+A0.2 +AM1 +R2'
  if [ -n "${DRAFT:-}" ]; then w=$((w/2)) h=$((h/2)); fi
  if [ -z "${AGAIN:-}" ]; then
    rm -f "$work/eye.txt"
    # shellcheck disable=SC2086
    trace "$1" "$work/$1.traced.png" "$w" "$h" $edges || return 1
  fi
  convert "$work/$1.traced.png" -filter Lanczos -resize 75% "$work/$1.png"
  blur "$1" "$work/$1.png" || return 1
  for quality in 82 78 74 70 66 60; do
    develop "$work/$1.png" "$work/$1.jpg" $quality
    [ "$(wc -c < "$work/$1.jpg")" -gt 350000 ] || break
  done
  [ -z "${DRAFT:-}" ] || return 0
  case $7 in
    6) mogrify -rotate 270 "$work/$1.jpg" ;;
    8) mogrify -rotate 90 "$work/$1.jpg" ;;
  esac
  exiftool -q -overwrite_original -DateTimeOriginal="$5" -CreateDate="$5" -OffsetTimeOriginal="$6" \
    -Orientation#="$7" "$work/$1.jpg"
  mkdir -p "$(dirname "$scenes/../$2")"
  mv "$work/$1.jpg" "$scenes/../$2"
}

grep -v "^#" "$scenes/pictures.txt" | while IFS='|' read -r scene target width height taken offset turn; do
  case " ${*:-$scene} " in *" $scene "*) echo "$scene"; picture "$scene" "$target" "$width" "$height" "$taken" "$offset" "$turn" || echo "failed: $scene" ;; esac
done
