// Nine inches of the near waist rail between two pillars, seen from outside. Left = 0: wet and black round three bolt holes;
// 1: new ash scarfed in, one end on the slope of 1 in 8.
#declare Base = .18;
#ifndef (Left) #declare Left = 0; #end
#include "stage.inc"
Look(<-8,44,-104>, <1,-1,0>, 44)
Soft_Light(<-90,120,-160>, <0,0,0>, 60, rgb <.9,.97,1.04>*1.5)
Fill_Light(<120,40,-160>, rgb <1,.93,.84>*.25)
#declare Rail = Rounded(<-60,-4.5,-1.9>, <60,4.5,1.9>, .3)
#local K = -1; #while (K < 2) object { Rounded(<-60,-2.8,-2.6>, <60,2.8,3.4>, .4) rotate z*90 translate <K*43,0,4.2> texture { Ash_Old rotate z*90 translate K*7 } } #local K = K+2; #end
#declare Holes = array[3] { <.6,3.2,0>, <-7,-1.8,0>, <8.3,-1.7,0> }
#if (Left)
  // the new piece runs from a square shoulder on the left to the scarf on the right
  #declare New_Part = prism { linear_sweep linear_spline -9, 9, 5, <-15,-3>, <-15,3>, <49.7,3>, <2.3,-3>, <-15,-3> }
  intersection { object { Rail } object { New_Part } texture { Ash_New translate 5 } }
  difference { object { Rail } object { New_Part scale 1.0005 } texture { Ash_Old } }
  cylinder { <11,4.5,-1.93>, <11,-4.5,-1.93>, .07 pigment { S(150,110,62) } } cylinder { <11,4.52,-1.9>, <41,4.52,1.9>, .07 pigment { S(150,110,62) } }
  cylinder { <-15,4.5,-1.95>, <-15,-4.5,-1.95>, .07 pigment { S(150,110,62) } }
  text { ttf "timrom.ttf" "IIII" .3, 0 scale <3,3,1> translate <37,-1,-1.95> pigment { rgb .05 } }
#else
  #declare F_Rot = function { F_Step(15 - abs(x) - abs(y)*.4 + (F_Mix(x*.16,y*.3,2)-.5)*14, 0, 6) }
  difference { object { Rail } #local I = 0; #while (I < 3) cylinder { z*-9, z*9, .55 translate Holes[I] } #local I = I+1; #end
    texture { function { F_Rot(x,y,z) } texture_map { [.1 Ash_Old] [.6 pigment { function { F_Mix(x*.5,y*1.6,z) } color_map { [.3 S(20,15,12)] [.7 S(58,42,30)] } } normal { function { F_Mix(x*.6,y*3,z*3) } .8 } finish { specular .25 roughness .05 }] } } }
  text { ttf "timrom.ttf" "IIII" .3, 0 scale <3,3,1> translate <37,-1,-1.95> pigment { rgb .05 } }
#end
Brick_Wall(150)
