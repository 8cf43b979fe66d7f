#!/bin/sh
# Draws the bread ticket. Usage: bread-ticket.sh OUT.jpg. Needs ImageMagick and the URW fonts.
set -eu
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
. "$(dirname "$0")/../faces.sh"
roman=$(face C059 Bold)
sans=$(face 'Nimbus Sans' Bold)
cd "$work"
convert -size 1000x620 xc:'#d6c094' -seed 5 \( -size 1000x620 plasma:gray46-gray58 -colorspace Gray -blur 0x6 \) -compose overlay -composite \
  \( -size 1000x620 xc:gray50 -attenuate .35 +noise Gaussian -colorspace Gray -blur 0x.8 \) -compose overlay -composite card.png
convert -size 1000x620 xc:none -gravity north -fill '#2a3226' \
  -font "$roman" -pointsize 104 -kerning 8 -annotate +0+96 'TANSLEY' \
  -font "$sans" -pointsize 62 -kerning 3 -annotate +0+262 'ONE PENNY LOAF' \
  -font "$roman" -pointsize 44 -kerning 2 -annotate +0+420 'PAY AT THE VAN' \
  -fill none -stroke '#2a3226' -strokewidth 5 -draw 'roundrectangle 44,44 956,576 26,26' -strokewidth 2 -draw 'roundrectangle 58,58 942,562 20,20' \
  -strokewidth 3 -draw 'line 300,232 700,232 line 300,372 700,372' ink.png
convert -size 1000x620 xc:white -seed 9 -attenuate 1.2 +noise Gaussian -colorspace Gray -blur 0x1.4 -level 30%,52% worn.png
convert ink.png \( +clone -alpha extract worn.png -compose multiply -composite \) -compose copyopacity -composite ink2.png
convert -size 1000x620 xc:none -fill none -stroke 'rgba(92,52,22,.55)' -strokewidth 16 -draw 'ellipse 250,440 150,132 20,330' -blur 0x7 \
  -fill 'rgba(96,58,26,.30)' -stroke none -draw 'ellipse 250,440 142,124 0,360' -blur 0x4 stain.png
convert card.png ink2.png -compose over -composite stain.png -compose multiply -composite flat.png
# Worn outline: a torn corner top right, rounded and frayed edges, a punched hole.
convert -size 1000x620 xc:black -fill white -draw 'polygon 8,10 842,7 856,40 884,52 893,88 926,98 940,140 991,162 990,610 700,613 10,612' \
  -fill black -draw 'circle 108,310 108,288' -seed 3 -spread 7 -blur 0x2.5 -threshold 50% -blur 0x.9 -alpha off edge.png
convert flat.png edge.png -compose copyopacity -composite -background none -rotate -4 ticket.png
convert -size 1400x1000 xc:'#3d362f' -seed 4 \( -size 1400x1000 plasma:gray36-gray60 -colorspace Gray -blur 0x14 \) -compose overlay -composite \
  \( -size 1400x1000 xc:gray50 -attenuate .5 +noise Gaussian -colorspace Gray -motion-blur 0x14+0 \) -compose overlay -composite \
  -compose over \( ticket.png \( +clone -background black -shadow 75x9+10+14 \) +swap -background none -layers merge +repage \) -gravity center -compose over -composite \
  \( -size 1400x1000 radial-gradient:white-gray55 \) -compose multiply -composite -quality 84 -strip out.jpg
cd - >/dev/null
mv "$work/out.jpg" "$1"
