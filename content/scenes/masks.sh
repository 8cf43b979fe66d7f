#!/bin/sh
# Draws the flat sheets that the scenes lay on surfaces: lettering, scratches, labels.
# Usage: masks.sh OUT_FOLDER. Needs ImageMagick, rsvg-convert and the fonts named in README.md.
set -eu
out=$1
mkdir -p "$out"
. "$(dirname "$0")/faces.sh"
roman=$(face C059 Bold)
block=$(face 'League Spartan' ExtraBold)
script=$(face 'Dancing Script' Bold)
hand=$(face Breip Medium)
marker=$(face 'Because We Learn' Regular)
numerals=$(face 'Because We Connect' Regular)

# A line of white letters on black, stretched to WIDTH x HEIGHT pixels.
line() { # FONT KERN TEXT WIDTH HEIGHT FILE
  convert -background black -fill white -font "$1" -pointsize 300 -kerning "$2" label:"$3" \
    -trim +repage -resize "$4x$5!" "$6"
}

# Slight unsteadiness of a hand with a brush, the same on every run.
waver() { # FILE AMOUNT
  size=$(identify -format '%wx%h' "$1")
  convert -size "$size" -seed 7 xc:gray +noise Random -channel R -separate +channel \
    -virtual-pixel mirror -resize 12.5% -blur 0x6 -resize "$size!" -auto-level "$out/waver.png"
  convert "$1" "$out/waver.png" "$out/waver.png" -virtual-pixel black \
    -define compose:args="$2" -compose displace -composite "$1"
}

# Red = green paint, green = gilt edge, blue = the ruled pencil lines. GREEN RULES WIDTH FILE
layers() {
  convert "$1" -morphology Dilate Disk:"$3" "$out/wide.png"
  convert "$out/wide.png" "$1" -compose minus_src -composite "$out/gilt.png"
  convert "$1" "$out/gilt.png" "$2" -channel RGB -combine "$4"
  waver "$4" 4x4
  convert "$4" -blur 0x1.2 "$4"
}

# Nearside panel, 188 x 92 cm at 20 px to the cm: caps of 130, 90 and 70 mm.
nearside() {
  line "$roman" 22 'TANSLEY & DAUGHTER' 3330 260 "$out/l1.png"
  line "$roman" 100 'BAKERS' 1150 180 "$out/l2.png"
  line "$block" 44 'PENNY LOAF LANE' 2140 140 "$out/l3.png"
  convert "$out/l3.png" -background black -rotate -.3 "$out/l3.png" # it climbs
  convert -size 3760x1840 xc:black -gravity north -compose lighten \
    "$out/l1.png" -geometry +0+390 -composite "$out/l2.png" -geometry +0+890 -composite \
    "$out/l3.png" -geometry +0+1290 -composite "$out/green.png"
  convert -size 3760x1840 xc:black -fill none -stroke white -strokewidth 2 \
    -draw 'line 150,386 3610,388 line 160,653 3600,651 line 1200,885 2560,887 line 1200,1074 2570,1073' \
    -draw 'line 700,1286 3080,1287 line 690,1433 3070,1432 line 1880,300 1881,1500' "$out/rules.png"
  layers "$out/green.png" "$out/rules.png" 6 "$out/lettering.png"
  # the writer's own name, 12 mm high, under LANE at the edge
  convert "$out/lettering.png" -font "$script" -pointsize 36 -fill '#e00000' -gravity southeast -annotate +170+34 'Fenn.' "$out/lettering.png"
}

# Upper panel of the lettered door, 60 x 60 cm at 30 px to the cm: caps of 52 mm.
door() {
  line "$roman" 30 'HOT AT SIX' 1340 156 "$out/l1.png"
  convert -size 1800x1800 xc:black -gravity center "$out/l1.png" -geometry +0+60 -composite "$out/green.png"
  convert -size 1800x1800 xc:black -fill none -stroke white -strokewidth 2 \
    -draw 'line 180,879 1600,880 line 190,1041 1610,1040' "$out/rules.png"
  layers "$out/green.png" "$out/rules.png" 5 "$out/hot-at-six.png"
}

# A sheet of white strokes on black, from awk statements that print SVG paths.
strokes() { # FILE STATEMENTS
  { echo '<svg xmlns="http://www.w3.org/2000/svg" width="2048" height="2048"><rect width="2048" height="2048"/><g fill="none" stroke="#fff">'
    awk "BEGIN{srand(3); $2}"
    echo '</g></svg>'; } > "$out/$1.svg"
  rsvg-convert -o "$out/$1.png" "$out/$1.svg"
}

# Scratches: long stray ones mostly one way, and short curved ones as a sander leaves them.
scratches() {
  arc='printf "<path stroke-width=\"%.2f\" opacity=\"%.2f\" d=\"M %.1f,%.1f q %.1f,%.1f %.1f,%.1f\"/>\n",
    w, o, x, y, l*cos(a)/2-b*sin(a), l*sin(a)/2+b*cos(a), l*cos(a), l*sin(a)'
  strokes scratches "for(i=0;i<420;i++){x=rand()*2048; y=rand()*2048; a=(rand()-.5)*1.1; if(rand()<.2)a=rand()*3.14;
    l=exp(rand()*3.4)*16; b=(rand()-.5)*l*.12; w=.5+rand()*rand()*2.2; o=.25+rand()*.75; $arc}"
  strokes swirls "for(i=0;i<5200;i++){x=rand()*2048; y=rand()*2048; a=rand()*6.28; l=20+rand()*70;
    b=(rand()<.5?-1:1)*l*.35; w=.5+rand()*.9; o=.15+rand()*.6; $arc}"
}

# Dark writing on a white sheet; the scene tints the paper.
label() { # FILE SIZE POINT TEXT
  convert -size "$2" xc:white -gravity center -fill '#151515' -font "$marker" -pointsize "$3" \
    -annotate +0+0 "$4" -blur 0x0.7 "$out/$1.png"
}

cd "$out"
nearside
door
scratches
marker=$numerals label three 400x240 200 3
marker=$numerals label six 400x240 200 6
for n in A B C D; do label "mark-$n" 240x240 190 "$n"; done
label temporary 1400x320 250 TEMPORARY
# The bread ticket, printed on both sides of a card.
convert -size 640x440 xc:white -gravity north -fill '#151515' -font "$roman" -pointsize 84 -annotate +0+52 TANSLEY \
  -pointsize 46 -annotate +0+196 'ONE PENNY LOAF' -pointsize 34 -annotate +0+312 'PAY AT THE VAN' \
  -fill none -stroke '#151515' -strokewidth 6 -draw 'roundrectangle 16,16 624,424 22,22' ticket.png
convert -size 300x300 xc:white -gravity center -fill '#151515' -font "$roman" -pointsize 92 -annotate +0+0 '½ LB' half.png
label stamp 300x120 100 '25'

# A page of print and a page of handwriting, too small to read.
convert -size 1400x1000 xc:'#fff' -font "$roman" -pointsize 15 -fill '#333' $(awk 'BEGIN{srand(2); for(c=0;c<5;c++)for(r=0;r<44;r++){
  if(r<3&&c<3)continue; s=""; for(i=0;i<34;i++)s=s substr("aenotrisdl umwh cbp",int(rand()*19)+1,1); gsub(/ /,"_",s); printf "-annotate +%d+%d %s ",30+c*275,40+r*21,s}}') \
  -pointsize 70 -annotate +30+80 'THE_WEEK' "$out/print.png"
convert -size 1000x1400 xc:white -font "$hand" -pointsize 44 -fill '#1c2440' -interline-spacing 14 -annotate +90+120 "$(printf '%s\n' \
  'Eastwold, 8 March' '' 'Your letter came by way of' 'the parish office and I have' 'read it twice. Yes, that was' "my grandfather's van, and the" 'Daughter was my mother. The' 'letters were put on by a Mr' 'Fenn who did the shop-front' 'as well. He was paid in bread' 'for the best part of a year,' 'or so it was told to me. My' 'mother always said the gold' 'was real. I do not remember' 'the van brown.')" "$out/hand.png"
