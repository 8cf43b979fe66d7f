// The same joint closed under four clamps with waxed paper, glue standing out in beads.
#declare Base = .14;
#include "stage.inc"
#include "rail.inc"
#include "ironwork.inc"
Look(<-16,32,-56>, <0,7,0>, 46)
Evening_Light(<46,30,-36>)
Bench_Top(-55,70) Brick_Wall(72)
union {
  Scarf(0)
  #local I = 0;
  #while (I < 4)
    object { G_Clamp(6.2, 8) rotate y*-90 translate <-16.5+I*11,-3.1,0> }
    Rounded(<-19.4+I*11,2.6,-2.3>, <-13.6+I*11,3.1,2.3>, .15) Rounded(<-19.4+I*11,-3.1,-2.3>, <-13.6+I*11,-2.6,2.3>, .15)
    #local I = I+1;
  #end
  // Waxed paper above and below, creased.
  box { <-25,2.52,-4.2>, <25,2.58,3.4> pigment { rgbt <.9,.86,.72,.35> } finish { specular .3 roughness .05 } normal { wrinkles .5 scale 3 } }
  box { <-25,-2.6,-4.4>, <25,-2.54,3.4> pigment { rgbt <.9,.86,.72,.3> } finish { specular .3 roughness .05 } normal { wrinkles .5 scale 3 } }
  #local R = seed(4); #local I = 0;
  #while (I < 46)
    #local X = -19+I*.84+rand(R)*.4; #local B = .12+rand(R)*rand(R)*.34;
    sphere { 0, B scale <1,1.35,.8> translate <X,-X/8-B*.3,-2.28> pigment { S(226,196,132) } finish { diffuse .7 specular .7 roughness .01 } }
    #local I = I+1;
  #end
  translate y*5.6
  texture { Ash_New }
}
object { Rounded(<-52,0,-3>, <-40,3.1,3>, .2) texture { Ash_Old } } object { Rounded(<40,0,-3>, <52,3.1,3>, .2) texture { Ash_Old } }
