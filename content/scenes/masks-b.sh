#!/bin/sh
# Draws the sheets that only the scenes of pictures-b.txt need. Usage: masks-b.sh OUT_FOLDER. Needs ImageMagick.
set -eu
. "$(dirname "$0")/faces.sh"
marker=$(face 'Because We Learn' Regular)
convert -size 1900x440 xc:white -gravity center -fill '#151515' -font "$marker" \
  -pointsize 270 -annotate +0+0 TEMPORARY -blur 0x0.8 "$1/temporary-wide.png"
