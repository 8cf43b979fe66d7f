// A disc wheel down on the concrete, an axle stand pushed aside, light from the open door.
#declare Base = .2;
#include "stage.inc"
#include "van.inc"
Look(<-38,52,-150>, <14,32,0>, 46)
Door_Light(<-220,130,-190>, <0,30,0>, 1.25)
Floor() Brick_Wall(150)
object { Wheel(Brown) translate <0,32.4,0> }
difference { union { cylinder { <0,33,-9>, <0,33,40>, 43 } box { <-120,56,-6>, <120,130,40> } } cylinder { <0,33,-60>, <0,33,60>, 39.5 } box { <-99,-20,-60>, <99,44,60> } texture { Brown } }
// The axle stand.
union {
  cone { <0,26,0>, 3, <0,30,0>, 3 } cylinder { <0,14,0>, <0,38,0>, 2.4 texture { Steel_Dull } }
  difference { Rounded(<-6,38,-3>, <6,42,3>, .5) cylinder { <0,44,-9>, <0,44,9>, 4.2 } texture { Steel_Dull } }
  #local I = 0; #while (I < 4) cylinder { <2,28,0>, <15,1,0>, 1.3 rotate y*(45+90*I) } cylinder { <14.5,1,0>, <0,1,14.5>, .9 rotate y*(45+90*I) } #local I = I+1; #end
  cylinder { <-4,24,0>, <7,24,0>, .5 texture { Steel_Bright } }
  texture { pigment { function { F_Mix(x*.6,y*.6,z*.6) } color_map { [.5 S(150,36,28)] [.7 S(92,40,30)] } } finish { specular .3 roughness .04 } }
  rotate y*20 translate <62,0,-22>
}
