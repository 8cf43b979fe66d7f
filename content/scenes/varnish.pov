// A wide flat brush and a jar of varnish at the edge of the lettered panel, its left half wet and deeper.
#declare Base = .16;
#include "stage.inc"
#include "smallwares.inc"
Look(<12,46,-64>, <4,1,-6>, 48)
Evening_Light(<-60,26,30>)
#declare I_Letter = function { pigment { image_map { png "lettering.png" interpolate 2 once } rotate x*90 scale <188,1,92> translate <-62,0,-52> } }
#declare F_Wet = function { F_Step(-x + 1 + 3*f_noise3d(x*.1,1,z*.35) + 1.2*f_noise3d(x*.3,1,z*2), -.2, .2) }
#declare F_Wear = function { F_Step(F_Mix(x*.09,1,z*.1)*.6+f_noise3d(x*.12,5,z*4.5)*.35+f_noise3d(x*3,1,z*3)*.12, .48, .78) }
#declare P_Dry = pigment { function { F_Step(I_Letter(x,0,z).red-F_Wear(x,0,z)*.6,.3,.45) } pigment_map {
  [0 function { F_Step(I_Letter(x,0,z).green-F_Wear(x,0,z)*.6,.34,.5) } pigment_map { [0 function { F_Mix(x*.1,1,z*.3) } color_map { [.3 S(214,198,160)] [.7 S(234,222,190)] }] [1 S(182,142,62)] }] [1 S(66,92,72)] } }
#declare P_Wet = pigment { function { F_Step(I_Letter(x,0,z).red-F_Wear(x,0,z)*.6,.3,.45) } pigment_map {
  [0 function { F_Step(I_Letter(x,0,z).green-F_Wear(x,0,z)*.6,.34,.5) } pigment_map { [0 function { F_Mix(x*.1,1,z*.3) } color_map { [.3 S(188,152,92)] [.7 S(212,180,122)] }] [1 S(176,122,34)] }] [1 S(16,42,26)] } }
box { <-90,-2,-16>, <90,0,39.6> texture { function { F_Wet(x,y,z) } texture_map {
  [.4 pigment { P_Dry } normal { bumps .06 scale 1 } finish { diffuse .8 specular .03 }]
  [.6 pigment { P_Wet } normal { function { f_noise3d(x*.1,1,z*5) } .05 } finish { diffuse .75 specular .9 roughness .004 reflection .13 }] } } }
Brick_Wall(120)
// The trestle board in front of the panel, where the jar stands.
object { Rounded(<-90,-4,-40>, <90,-2,-16.4>, .3) texture { Ash_Old } }
object { Jam_Jar(.55, rgb <.95,.66,.26>) translate <18,-2,-24> }
// The brush: bristles, tinned ferrule, beech handle.
union {
  difference { Rounded(<-7,-.9,-4>, <0,.9,4>, .5) #local I = 0; #local R = seed(2); #while (I < 40) cylinder { <-7.6,-1.2,-4+I*.2>, <-6.6+rand(R)*.9,1.2,-4+I*.2>, .07 } #local I = I+1; #end
    pigment { function { f_noise3d(x*.3,y*9,z*11) } color_map { [.2 S(96,70,40)] [.7 S(196,160,104)] } } normal { function { f_noise3d(x*.3,y*9,z*11) } .6 } finish { specular .5 roughness .03 } }
  Rounded(<-.2,-1.1,-4.1>, <4,1.1,4.1>, .4) 
  prism { linear_sweep linear_spline -.7, .7, 9, <3.9,-3.6>, <6.4,-3>, <8.4,-1.4>, <17,-1.1>, <18.4,0>, <17,1.1>, <8.4,1.4>, <6.4,3>, <3.9,3.6> texture { Ash_New pigment { S(170,96,46) } finish { specular .5 roughness .02 } } }
  texture { Steel_Dull }
  rotate <0,-52,0> rotate x*3 translate <-8,1.1,-13>
}
