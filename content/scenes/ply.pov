// A raw birch ply sheet as a bulkhead behind the driver's seat, TEMPORARY written on it.
#declare Base = .17;
#include "stage.inc"
Look(<14,96,-190>, <0,78,0>, 48)
Soft_Light(<-40,230,-150>, <0,70,0>, 60, rgb <.93,1,.94>*1.25)
Soft_Light(<90,110,-150>, <0,60,0>, 8, rgb <1,.74,.45>*.55)
Fill_Light(<40,90,-300>, rgb <.9,.95,1>*.15)
#declare T_Black = texture { Black_Paint(.25,.3) }
#declare I_Mark = function { pigment { image_map { png "temporary-wide.png" interpolate 2 once } scale <78,18,1> rotate z*3 translate <-44,112,0> } }
#declare P_Birch = pigment { wood turbulence .14 omega .55 rotate x*2 translate <0,1,30> scale <9,60,9> rotate z*88 color_map { [0 S(226,198,150)] [.4 S(214,182,130)] [.5 S(196,158,108)] [.56 S(220,190,140)] [1 S(228,202,156)] } }
box { <-70,34,0>, <70,166,1.2> texture { pigment { function { (abs(x+5)<39.2)*(abs(y-121)<13)*(1-I_Mark(x,y,0).red) } pigment_map { [.3 P_Birch] [.7 rgb .015] } } finish { specular .06 } } }
// Cut edge plies, and the ash frame it is screwed to.
#local I = 0; #while (I < 9) box { <70,34,I*.14>, <70.1,166,I*.14+.07> pigment { S(150,112,74) } } #local I = I+1; #end
#local K = -1; #while (K < 2) object { Rounded(<20,-4,-4>, <200,4,2>, .5) rotate z*90 translate <K*75,0,0> texture { Ash_Old rotate z*90 } } #local K = K+2; #end
object { Rounded(<-80,166,-4>, <80,174,2>, .5) texture { Ash_Old } }
#local I = 0; #while (I < 6) #local K = -1; #while (K < 2)
  union { cylinder { z*-.25, z*.1, .95 texture { Brass } } box { <-.7,-.12,-.3>, <.7,.12,-.2> rotate z*(I*40+K*20) pigment { rgb .03 } } translate <K*66,42+I*23,0> } #local K = K+2; #end #local I = I+1; #end
// The opening in the cab's back in brown steel, and the seat before the sheet.
union { box { <-200,0,-3>, <-80,220,-2> } box { <80,0,-3>, <200,220,-2> } box { <-200,174,-3>, <200,240,-2> } texture { Brown } }
plane { y, 20 texture { pigment { function { F_Mix(x*.1,1,z*.1) } color_map { [.3 S(46,44,42)] [.7 S(74,70,66)] } } normal { function { abs(sin(x*.6)) } .2 } } }
#macro Tube_Path(P) sphere_sweep { linear_spline dimension_size(P,1), #local I = 0; #while (I < dimension_size(P,1)) P[I], 1.6 #local I = I+1; #end texture { T_Black } } #end
#local K = -1; #while (K < 2) object { Tube_Path(array[4] { <12+K*23,21,-66>, <12+K*23,48,-66>, <12+K*23,50,-26>, <12+K*22,92,-16> }) } object { Tube_Path(array[2] { <12+K*23,21,-24>, <12+K*23,50,-28> }) } #local K = K+2; #end
object { Tube_Path(array[2] { <-10,92,-16>, <34,92,-16> }) } object { Tube_Path(array[2] { <-11,48,-66>, <35,48,-66> }) }
union { Rounded(<-9,49,-65>, <33,57,-27>, 3.4) object { Rounded(<-8,0,-2.4>, <32,27,2.4>, 2.2) rotate x*12 translate <0,62,-23.5> }
  texture { pigment { function { F_Mix(x*.2,y*.2,z*.2) } color_map { [.3 S(66,46,34)] [.7 S(92,64,46)] } } normal { wrinkles .3 scale 4 } finish { specular .25 roughness .04 } } }
