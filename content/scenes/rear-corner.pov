// The near rear corner of the ash frame on its chassis, from behind and above. Left = 0: the old sill, spiked, its paint on its
// face; 1: the new one in its place, the irons back and black.
#declare Base = .18;
#ifndef (Left) #declare Left = 0; #end
#declare Near_Wing = 0; #declare Lamps = 0;
#include "stage.inc"
#include "van.inc"
Look(<290,112,-96>, <182,60,-30>, 40)
Soft_Light(<330,240,-260>, <180,60,-30>, 100, rgb <.86,.95,1.08>*1.5)
Fill_Light(<420,160,100>, rgb <1,.94,.86>*.2)
Floor() plane { x, -330 texture { Whitewashed_Brick rotate y*90 translate x*-330 } }
#if (Left) object { Skeleton(Ash_New) } #else object { Skeleton(Ash_Old) } #end
object { Chassis() }
#declare F_Face = function { F_Mix(z*.12,y*.3,3)*.7+F_Mix(z*.9,y*1.2,5)*.3 }
#if (!Left)
  // brown over cream over grey on the outside face, flaked at the near end
  box { <189.25,56.3,-72>, <189.4,62.2,72> texture { function { F_Step(F_Face(x,y,z) + F_Step(-z,30,70)*.16, .3, .75) } texture_map { [.4 Brown] [.5 Undercoat] [.52 pigment { S(224,208,170) }] [.62 Primer] [.7 Primer] [.74 Ash_Old rotate y*90] } } }
  // the rebate on top, wet and black along it, with the holes of a spike; crumbs below
  box { <184.6,62.4,-66>, <187.4,62.62,58> texture { pigment { function { F_Mix(z*.1,1,x*.4)*.7+F_Mix(z*.8,1,x*.8)*.3 } color_map { [.3 S(34,26,20)] [.6 S(74,56,40)] } } finish { specular .2 roughness .05 } } }
  #local R = seed(8); #local I = 0; #while (I < 14) cylinder { <186+rand(R)*1.2-.6,62,-62+I*7.4+rand(R)*3>, <186+rand(R)*.6,62.7,-62+I*7.4+rand(R)*3>, .42 pigment { rgb .01 } } #local I = I+1; #end
  #local I = 0; #while (I < 60) box { -.5, .5 scale .4+rand(R)*.9 rotate <rand(R)*90,rand(R)*90,0> translate <192+rand(R)*18,.3,-70+rand(R)*60> texture { pigment { S(74,40,26) } } } #local I = I+1; #end
#else
  // the corner iron, forged, black again
  #local K = -1; #while (K < 2) union { Rounded(<188.4,57,K*74-1>, <189.8,96,K*74+1>, .3) Rounded(<188.6,57.2,K*74-K*26-1>, <189.9,61.4,K*74+1>, .3)
    sphere { <190,66,K*74>, .9 } sphere { <190,88,K*74>, .9 } sphere { <190,59.4,K*60>, .9 } sphere { <190,59.4,K*52>, .9 } translate z*K*-1.5 texture { Black_Paint(.05,.4) } } #local K = K+2; #end
#end
