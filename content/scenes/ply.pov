// Behind the driver's place. Stage 0: as found, no bulkhead, a clean shadow and empty screw holes on the pillars, the seat
// with a kitchen chair pad. Stage 1: a sheet of raw birch ply, two screws a pillar, TEMPORARY written on it, the bare frame mended.
#declare Base = .17;
#include "stage.inc"
#ifndef (Stage) #declare Stage = 1; #end
Look(<14,96,-190>, <0,78,0>, 48)
Soft_Light(<-40,230,-150>, <0,70,0>, 60, rgb <.93,1,.94>*1.25)
Soft_Light(<90,110,-150>, <0,60,0>, 8, rgb <1,.74,.45>*.55)
Fill_Light(<40,90,-300>, rgb <.9,.95,1>*.15)
#declare T_Black = texture { Black_Paint(.5-.35*Stage,.3) }
#if (Stage)
  #declare I_Mark = function { pigment { image_map { png "temporary-wide.png" interpolate 2 once } scale <78,18,1> rotate z*3 translate <-44,112,0> } }
  #declare P_Birch = pigment { wood turbulence .14 omega .55 rotate x*2 translate <0,1,30> scale <9,60,9> rotate z*88 color_map { [0 S(226,198,150)] [.4 S(214,182,130)] [.5 S(196,158,108)] [.56 S(220,190,140)] [1 S(228,202,156)] } }
  box { <-73,22,0>, <73,166,1.2> texture { pigment { function { (abs(x+5)<39.2)*(abs(y-121)<13)*(1-I_Mark(x,y,0).red) } pigment_map { [.3 P_Birch] [.7 rgb .015] } } finish { specular .06 } } }
  #local I = 0; #while (I < 2) #local K = -1; #while (K < 2)
    union { cylinder { z*-.25, z*.1, .95 texture { Brass } } box { <-.7,-.12,-.3>, <.7,.12,-.2> rotate z*(I*40+K*20) pigment { rgb .03 } } translate <K*70.5,62+I*76,0> } #local K = K+2; #end #local I = I+1; #end
#else
  // through the opening: the load bay with its floor, the far doors shut
  box { <-90,30,300>, <90,180,304> texture { Brown } } box { <-90,178,6>, <90,182,304> texture { Ash_Old rotate y*90 } } box { <-90,21,4>, <90,28,6> texture { Ash_Old } } box { <-.4,30,299>, <.4,180,301> pigment { rgb .01 } }
  #local I = -4; #while (I < 5) object { Rounded(<I*16-7.9,28,6>, <I*16+7.9,31,300>, .3) texture { Ash_Old rotate y*90 translate <I*31,0,I*7> } } #local I = I+1; #end
  #local K = -1; #while (K < 2) box { <K*82,28,4>, <K*84,190,300> texture { Brown } }
    // pairs of tray runners from the top, odd numbers on the near side; 3, 7 and 8 are not there
    #local I = 0; #while (I < 6) #if (!((K < 0) & ((I = 1) | (I = 3))) & !((K > 0) & (I = 3)))
      object { Rounded(<-2,0,8>, <2,2.4,298>, .4) texture { Ash_Old rotate y*90 translate I*9 } translate <K*79,150-I*20,0> } #end #local I = I+1; #end #local K = K+2; #end
#end
// The ash pillars the sheet is screwed to; as found, paler where the panelled one stood, with its holes.
#local K = -1; #while (K < 2) object { Rounded(<20,-4,-4>, <200,4,2>, .5) rotate z*90 translate <K*75,0,1.2+4> texture { Ash_Old rotate z*90 } }
  #if (!Stage) box { <-3.2,36,1.1>, <2,164,1.16> translate x*K*75 texture { Ash_New } }
    #local I = 0; #while (I < 2) cylinder { <K*75-K*1.2,62+I*76,1>, <K*75-K*1.2,62+I*76,1.15>, .42 pigment { rgb .02 } } #local I = I+1; #end #end
  #local K = K+2; #end
object { Rounded(<-80,166,-4>, <80,174,2>, .5) translate z*5 texture { Ash_Old } }
// The opening in the cab's back in brown steel, and the seat before it.
union { box { <-200,0,-3>, <-80,220,-2> } box { <80,0,-3>, <200,220,-2> } box { <-200,174,-3>, <200,240,-2> } texture { Brown } }
box { <-200,20,-200>, <200,21,4> texture { pigment { function { F_Mix(x*.1,1,z*.1) } color_map { [.3 S(46,44,42)] [.7 S(74,70,66)] } } normal { function { abs(sin(x*.6)) } .2 } } }
// The seat: tubes as rods and balls, six flat springs, two of them broken as found.
#macro Tube_Path(P) union { sphere { P[0], 1.6 } #local I = 1; #while (I < dimension_size(P,1)) cylinder { P[I-1], P[I], 1.6 } sphere { P[I], 1.6 } #local I = I+1; #end texture { T_Black } } #end
#local K = -1; #while (K < 2) object { Tube_Path(array[4] { <12+K*23,21,-66>, <12+K*23,48,-66>, <12+K*23,50,-26>, <12+K*22,92,-16> }) } object { Tube_Path(array[2] { <12+K*23,21,-24>, <12+K*23,50,-28> }) } #local K = K+2; #end
object { Tube_Path(array[2] { <-10,92,-16>, <34,92,-16> }) } object { Tube_Path(array[2] { <-11,48,-66>, <35,48,-66> }) } object { Tube_Path(array[2] { <-10.4,68,-21>, <34.4,68,-21> }) }
object { Tube_Path(array[2] { <-11,50,-27>, <35,50,-27> }) }
#local I = 0; #while (I < 6) #local J = 0; #while (J < 20)
    #local P = <-6+I*7.2+mod(J,2)*4.6-2.3, 49.6-2.4*sin(pi*J/19), -65+J*2>;
    #if (J > 0) cylinder { Before, P, .38 texture { #if (Stage & ((I = 2) | (I = 4))) Steel_Bright #else Steel_Dull #end } } #end
    #declare Before = P; #local J = J+1; #end #local I = I+1; #end
#if (!Stage) // a kitchen chair pad in gingham, tied on
  #declare F_Check = function { .5*(mod(abs(floor(x/3.2)),2)) + .5*(mod(abs(floor(z/3.2)),2)) }
  object { Rounded(<-9,50,-66>, <33,56,-27>, 2.9) texture { pigment { function { F_Check(x,y,z) } color_map { [0 S(196,188,174)] [.5 S(150,110,104)] [1 S(112,48,46)] } } normal { wrinkles .4 scale 5 } finish { diffuse .8 } } }
  // the squab: cloth split along the top, horsehair showing
  object { Rounded(<-9,64,-26>, <33,91,-20.5>, 2.4) rotate x*0 texture { pigment { function { F_Mix(x*.2,y*.2,z*.2) } color_map { [.3 S(66,46,34)] [.7 S(92,64,46)] } } normal { wrinkles .3 scale 4 } finish { specular .25 roughness .04 } } }
  #local R = seed(4); #local I = 0; #while (I < 160) #local X = -4+rand(R)*26; cylinder { <X,89.6,-25+rand(R)*3>, <X+rand(R)*4-2,91.6+rand(R)*1.6,-26+rand(R)*4>, .09 pigment { S(52,42,34) } } #local I = I+1; #end
#end
