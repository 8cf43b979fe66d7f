// A red two-gallon can hung on the steel bulkhead, a clear pipe from it, an extinguisher on the floor.
#declare Base = .17;
#include "stage.inc"
Look(<-30,84,-180>, <-8,62,0>, 50)
Door_Light(<-160,190,-150>, <0,80,0>, 1.4)
Floor()
#declare Steel_Painted = texture { pigment { function { F_Mix(x*.05,y*.03,z) } color_map { [.35 S(98,104,100)] [.6 S(126,130,124)] [.72 S(112,84,62)] } } normal { granite .06 scale 4 } finish { specular .2 roughness .05 } }
#declare Red = texture { pigment { function { F_Mix(x*.4,y*.4,z*.4) } color_map { [.55 S(168,30,24)] [.68 S(140,34,26)] [.74 S(96,60,44)] } } normal { bumps .05 scale 3 } finish { specular .5 roughness .02 reflection .05 } }
box { <-200,12,8>, <200,260,10> texture { Steel_Painted } }
union { Rounded(<-200,128,4>, <200,133,9>, 1) Rounded(<-200,9,2>, <200,15,9>, 1) #local I = 0; #while (I < 24) sphere { <-140+I*12,130.5,4>, .9 } sphere { <-140+I*12,12,2>, .9 } #local I = I+1; #end texture { Steel_Painted } }
// The hook and the can.
sphere_sweep { cubic_spline 8, <2,122,12>, .6, <2,121,7>, .6, <2,118,2>, .6, <2,112,-7>, .6, <2,108,-9>, .6, <2,106.4,-6>, .6, <2,108,-3>, .6, <2,110,-2>, .6 texture { Steel_Dull } }
union {
  Rounded(<-13,66,-16>, <13,98,4>, 1.6)
  Rounded(<-13.4,96,-16.4>, <13.4,97.6,4.4>, .6) Rounded(<-13.4,67,-16.4>, <13.4,68.6,4.4>, .6)
  object { Rounded(<-9,-.4,-.5>, <9,.4,.3>, .2) rotate z*51 translate <0,82,-16> } object { Rounded(<-9,-.4,-.5>, <9,.4,.3>, .2) rotate z*-51 translate <0,82,-16> }
  sphere_sweep { cubic_spline 6, <-8,94,-6>, .9, <-7,98,-6>, .9, <-4,106,-6>, .9, <6,107,-6>, .9, <9,98,-6>, .9, <10,94,-6>, .9 }
  texture { Red }
}
cylinder { <-9,97,-11>, <-9,100.5,-11>, 2.6 texture { Brass } } 
// The tap and the clear pipe, a little fuel yellow in it.
union { cylinder { <9,66.5,-10>, <9,61,-10>, 1 } Rounded(<7.6,61.5,-13.4>, <10.4,63,-9>, .4) texture { Brass } }
sphere_sweep { cubic_spline 8, <9,66,-10>, .8, <9,61,-10>, .8, <9.4,50,-11>, .8, <16,34,-14>, .8, <30,24,-20>, .8, <48,26,-24>, .8, <90,18,-30>, .8, <120,10,-30>, .8
  pigment { rgbt <.9,.84,.58,.3> } finish { specular .8 roughness .01 reflection .06 } }
// The extinguisher.
union {
  lathe { linear_spline 9, <0,-1>, <8,0>, <8.4,1>, <8.4,12>, <8.4,36>, <7.6,41>, <4,44.4>, <2.4,45>, <0,45.2> texture { Red } }
  cylinder { y*18, y*30, 8.5 open pigment { S(232,226,208) } }
  cylinder { y*44, y*49, 2 texture { Brass } } Rounded(<-2,48,-1.4>, <11,50,1.4>, .5) object { Rounded(<-2,51,-1.2>, <10,52.4,1.2>, .4) rotate z*8 }
  sphere_sweep { cubic_spline 6, <0,47,0>, 1, <-2,47,-1>, 1, <-10,44,-3>, 1, <-11,30,-4>, 1, <-10,16,-5>, 1.3, <-10,10,-5>, 1.3 texture { Rubber } }
  pigment { rgb .03 } finish { specular .4 }
  translate <-48,0,-18>
}
