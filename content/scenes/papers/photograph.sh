#!/bin/sh
# Prints the rendered photograph.pov as an old one. Usage: photograph.sh RENDER.png OUT.jpg. Needs ImageMagick, Rufscript.
set -eu
. "$(dirname "$0")/../faces.sh"
pencil=$(face Rufscript Regular)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
convert "$1" -resize '1300x975!' -rotate -.6 -gravity center -crop 1240x900+0+0 +repage -colorspace Gray -blur 0x1.3 -auto-level -gamma 1.55 \
  \( -size 1240x900 radial-gradient:white-gray72 \) -compose multiply -composite +level 16%,94% \
  \( -size 1240x900 xc:gray50 -seed 2 -attenuate .45 +noise Gaussian -colorspace Gray -blur 0x.9 \) -compose overlay -composite \
  \( -size 1240x900 gradient:gray64-gray46 -rotate 0 \) -compose overlay -composite "$work/image.png"
# Scratches, two creases, specks of dust, then the border.
convert "$work/image.png" -fill none -stroke 'rgba(255,255,255,.35)' -strokewidth 1 -draw 'path "M 210,0 q 14,300 -8,620"' -draw 'path "M 806,190 q 60,120 66,420"' \
  -draw 'line 420,700 560,742' -draw 'line 1010,60 1032,300' -stroke 'rgba(255,255,255,.55)' -strokewidth 2.4 -draw 'path "M 1090,0 q 30,70 150,120"' \
  -stroke 'rgba(40,40,40,.4)' -strokewidth 1.4 -draw 'path "M 1092,0 q 30,70 152,121"' -fill 'rgba(255,255,255,.6)' -stroke none \
  -draw 'circle 300,210 303,211 circle 911,402 913,403 circle 650,130 652,132 circle 120,760 123,761' \
  -bordercolor '#e2e2e2' -border 55x40 -gravity north -background '#e2e2e2' -extent 1350x1060 \
  -colorspace sRGB -fill '#94815f' -tint 30 "$work/print.png"
convert "$work/print.png" -gravity southwest -font "$pencil" -pointsize 46 -fill 'rgba(82,80,84,.8)' \
  -annotate +96+26 'June 1953' "$work/named.png"
# Deckle edge: the outline waved by a slow and a quick wave.
convert -size 1350x1060 xc:white -bordercolor black -border 12 -wave 4x23 -gravity center -crop 1350x1060+0+0 +repage \
  -rotate 90 -wave 4x21 -rotate -90 -gravity center -crop 1350x1060+0+0 +repage -alpha off -blur 0x1 "$work/edge.png"
convert "$work/named.png" "$work/edge.png" -compose copyopacity -composite -background none -rotate 1.2 "$work/cut.png"
convert -size 1500x1200 xc:'#4a4239' -seed 6 \( -size 1500x1200 plasma:gray44-gray56 -colorspace Gray -blur 0x20 \) -compose overlay -composite \
  -compose over \( "$work/cut.png" \( +clone -background black -shadow 70x8+8+12 \) +swap -background none -layers merge +repage \) -gravity center -composite \
  -quality 82 -strip "$2"
