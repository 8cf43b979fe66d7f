// The cream panel nailed back on its ash pillar with copper-headed pins at even spacing; a small hammer.
#declare Base = .17;
#include "stage.inc"
Look(<-4,8,-50>, <3,1,0>, 44)
Soft_Light(<-70,60,-70>, <0,0,0>, 10, rgb <1,.88,.7>*1.3)
Fill_Light(<60,40,-160>, rgb <.85,.93,1.05>*.25)
// Pillar upright on the left, its arris showing past the panel's edge.
object { Rounded(<-60,-2.6,0>, <60,2.6,6>, .3) rotate z*90 scale <2.6,1,1> translate <-8,0,0> texture { Ash_Old rotate z*90 } }
#declare P_Cream = pigment { function { F_Mix(x*.12,y*.1,2)*.6 + f_noise3d(x*.2,y*4.5,6)*.3 } color_map { [.2 S(208,190,150)] [.5 S(232,219,184)] [.8 S(240,230,204)] } }
box { <-9,-60,-.35>, <60,60,0> texture { function { F_Mix(x*.3,y*.3,5)*.7 + F_Mix(x*2,y*2,3)*.3 - min(x+9,6)*.022 } texture_map {
  [.53 pigment { P_Cream } normal { bumps .08 scale .8 } finish { specular .12 roughness .04 }] [.54 Primer] [.6 Aluminium] } } }
box { <-9.12,-60,-.36>, <-8.9,60,0> texture { Aluminium } }
#local I = 0;
#while (I < 9)
  union { sphere { 0, .36 scale <1,1,.42> translate z*-.4 texture { Copper } } torus { .4, .06 rotate x*90 translate z*-.36 pigment { S(150,120,84) } } translate <-7.2+.06*sin(I*4),-20+I*5,0> }
  #local I = I+1;
#end
// A faint line of green lettering edge to the right.
#declare I_Letter = function { pigment { image_map { png "lettering.png" interpolate 2 once } scale <188,92,1> translate <-14,-58,0> } }
box { <-5,-60,-.4>, <60,60,-.36> pigment { function { F_Step(I_Letter(x,y,0).red-.5*F_Mix(x*.8,y*.8,1),.2,.34)*.5 + F_Step(I_Letter(x,y,0).green-.5*F_Mix(x*.8,y*.8,1),.24,.34)*(1-F_Step(I_Letter(x,y,0).red,.2,.34)) }
  color_map { [.1 rgbt <1,1,1,1>] [.3 S(44,72,54)] [.6 S(44,72,54)] [.9 S(182,142,62)] } } no_shadow }
// The hammer, hung head up by its shaft on the ledge below.
union {
  cylinder { x*-13, x*3, .62 texture { Ash_New } }
  union { cylinder { y*-2.6, y*-.6, 1.15 } cone { y*-.8, .8, y*1.2, .95 } prism { -.7, .7, 5, <-.95,1>, <.95,1>, <.25,4>, <-.25,4>, <-.95,1> rotate x*-90 scale <1,1,-1> } cylinder { y*-3, y*-2.5, 1.2 } translate x*2.2 texture { Steel_Bright } }
  rotate z*24 rotate x*-20 translate <9,-6.2,-2.4>
}
object { Rounded(<-60,-13.5,-7>, <60,-11.6,2>, .4) texture { Ash_New } }
