// The two rear doors shut, square on, late light from the left. Left = 1: the near one as uncovered, under a cream roof.
#declare Base = .13;
#include "stage.inc"
#include "van.inc"
#ifndef (Left) #declare Left = 0; #end
Look(<0,72,-250>, <0,66,0>, 46)
Soft_Light(<-260,150,-200>, <0,70,0>, 40, rgb <1.05,.93,.78>*1.3)
Fill_Light(<200,160,-300>, rgb <.7,.82,1>*.22)
#if (Left) object { Rear_Doors_Left(Brown) } #else object { Rear_Doors(Brown) } #end
union { Rounded(<-78,-9,-1>, <-70.6,145,8>, .8) Rounded(<70.6,-9,-1>, <78,145,8>, .8) texture { Brown rotate z*90 } }
union { Rounded(<-78,-9,-2>, <78,-.5,8>, .8) Rounded(<-78,135.6,-1>, <78,144,8>, .8) texture { Brown } }
intersection { cylinder { <0,158-365,-2>, <0,158-365,60>, 365 } box { <-80,140,-5>, <80,230,70> } texture { #if (Left) pigment { S(220,206,170) } normal { granite .06 scale 1 } #else T_Canvas #end } }
object { Wheel(Brown) rotate y*90 translate <-64,-32,30> } object { Wheel(Brown) rotate y*90 translate <64,-32,30> }
box { <-36,-14,3>, <36,-9,20> texture { T_Black } }
plane { y, -65 texture { Concrete translate y*-65 } }
plane { -z, -500 pigment { rgb .05 } }
