// The rear spring back under its rail, a red tapered oak block packed between spring and axle, U-bolts round both.
#declare Base = .17;
#include "stage.inc"
#include "ironwork.inc"
Look(<-30,8,-92>, <4,33,0>, 50)
Door_Light(<-120,60,-150>, <0,30,0>, 2.6)
Floor() Brick_Wall(130)
#declare T_Chassis = texture { Black_Paint(.08,.4) }
#declare T_Red = texture { pigment { function { F_Mix(x*.5,y,z) } color_map { [0 S(176,26,20)] [1 S(204,42,30)] } } normal { N_Timber } finish { specular .4 roughness .03 } }
// Chassis rail, channel section.
difference { box { <-120,60,-4>, <120,76,6> } box { <-130,62,-9>, <130,74,3> } texture { T_Chassis } }
#local I = 0; #while (I < 5) sphere { <-60+I*34,75.8,-4>, 1 texture { T_Chassis } } #local I = I+1; #end
// Seven leaves, longest on top.
#local I = 0; #local L = array[7] { 104, 96, 82, 68, 54, 41, 28 };
union {
  #while (I < 7) difference { cylinder { <0,0,-2.6>, <0,0,2.6>, 250 } cylinder { <0,0,-3>, <0,0,3>, 249 } plane { y, 0 } box { <L[I]/2,-300,-9>, <400,300,9> } box { <-400,-300,-9>, <-L[I]/2,300,9> }
    scale <1,-1,1> translate y*(250+36.4-I*1.08) texture { T_Chassis translate I*9 } } #local I = I+1; #end
  difference { cylinder { <-53,43.5,-2.6>, <-53,43.5,2.6>, 2.4 } cylinder { <-53,43.5,-4>, <-53,43.5,4>, 1.2 } texture { T_Chassis } }
  difference { cylinder { <53,43.5,-2.6>, <53,43.5,2.6>, 2.4 } cylinder { <53,43.5,-4>, <53,43.5,4>, 1.2 } texture { T_Chassis } }
}
// Hanger in front, shackle behind.
union { difference { prism { -3.4, 3.4, 5, <-62,61>, <-44,61>, <-50.6,42>, <-55.4,42>, <-62,61> rotate x*-90 scale <1,1,-1> } box { <-70,0,-2.8>, <-30,56,2.8> } } texture { T_Chassis } }
union { cylinder { <-53,43.5,-4.4>, <-53,43.5,4.4>, 1.1 } cylinder { <53,43.5,-4.4>, <53,43.5,4.4>, 1.1 } cylinder { <57,60,-4.4>, <57,60,4.4>, 1.1 } texture { Steel_Bright } }
#local K = -1; #while (K < 2) object { Rounded(<-2.3,-2.6,-.5>, <2.3,19.6,.5>, .5) rotate z*-13.6 translate <53,43.5,K*3.6> texture { T_Chassis } } #local K = K+2; #end
// The block, the axle seat and tube, the U-bolts with their plate.
prism { linear_sweep linear_spline -3, 3, 5, <-11,28.6>, <11,28.6>, <11,22>, <-11,25.2>, <-11,28.6> rotate x*-90 scale <1,1,-1> texture { T_Red } }
union { cylinder { <0,17,-16>, <0,17,60>, 4.6 } prism { linear_sweep linear_spline -3.4, 3.4, 5, <-10.5,25.2>, <10.5,22>, <8,18.5>, <-8,20>, <-10.5,25.2> rotate x*-90 scale <1,1,-1> } texture { T_Chassis } }
union { cylinder { <0,17,-20>, <0,17,-16>, 15 } torus { 15, .8 rotate x*90 translate <0,17,-16> } texture { Iron_Cast } translate z*36 }
#local I = -1;
#while (I < 2)
  #local K = -1;
  #while (K < 2)
    union { cylinder { <I*6,10,K*4.2>, <I*6,37.8,K*4.2>, .7 texture { Steel_Bright } } object { Nut(1.3) translate <I*6,8.6,K*4.2> texture { Steel_Bright } } object { Thread(.72,5,.2,99,0) translate <I*6,5,K*4.2> texture { Steel_Bright } } }
    #local K = K+2;
  #end
  difference { torus { 4.2, .7 rotate z*90 } box { <-9,-9,-9>, <9,0,9> } scale <1,.4,1> translate <I*6,37.8,0> texture { Steel_Bright } }
  #local I = I+2;
#end
object { Rounded(<-9,10.2,-6>, <9,12,6>, .4) texture { T_Chassis } }
