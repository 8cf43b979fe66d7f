// The near front hub with its five studs in it, numbered in chalk; threads of the second and fourth pulled flat near the tip.
// A scene that includes this one may declare Renewed = 1: the second and fourth are new.
#declare Fill = .5;
#include "workshop.inc"
#include "ironwork.inc"
#ifndef (Renewed) #declare Renewed = 0; #end
#declare Lean = .01;
Eye(<-13,7,-27>, <.3,-.1,.4>, 46, .3, <0,0,-3>)
Tube(<-20,120,-60>, 1.1)
Hand_Lamp(<22,16,-30>, .55, 40)
#declare Stud_Steel = texture { function { F_Step(F_Mix(x*1.3,y*1.3,z*1.3) + F_Step(1.7-x,0,.5)*.15, .5,.7) }
  texture_map { [0 pigment { S(150,146,138) } normal { granite .03 scale .2 } finish { diffuse .45 specular .7 roughness .03 metallic reflection { .1 metallic } }] [1 pigment { S(104,76,56) } normal { granite .08 scale .2 } finish { diffuse .6 specular .4 roughness .05 }] } }
#declare Bruised = texture { function { F_Step(x + (f_noise3d(x*3,y*3,z*3)-.5)*.5, 2.9, 3.2) } texture_map { [0 Stud_Steel] [1 pigment { S(190,186,176) } normal { granite .3 scale .15 } finish { diffuse .4 specular .9 roughness .02 metallic reflection { .2 metallic } }] } }
#declare Flange = texture { function { F_Step(F_Mix(x*.5,y*.5,z*.5), .4+.16*Renewed, .62) } texture_map { [0 pigment { S(62,60,58) } finish { diffuse .6 specular .35 roughness .05 }] [1 Rust] } }
#declare Back = texture { function { F_Step(F_Mix(x*.22,y*.22,z*.22), .42, .6) } texture_map { [0 pigment { S(44,42,40) } finish { diffuse .7 specular .2 roughness .06 }] [1 Rust] } }
// back plate behind, hub flange before it, bearing boss and cap in the middle
cylinder { z*6, z*6.6, 22 texture { Back } } torus { 20.5, .5 rotate x*90 translate z*6 texture { Back } }
#local I = 0; #while (I < 6) sphere { <13,0,6>, .9 scale <1,1,1> rotate z*(I*60+14) texture { Steel_Dull } } #local I = I+1; #end
cylinder { z*.2, z*2.2, 9.6 texture { Flange } } torus { 9.4, .22 rotate x*90 translate z*.2 texture { Flange } }
cylinder { z*-1.6, z*3, 4.1 texture { Flange translate 7 } } torus { 3.9, .22 rotate x*90 translate z*-1.6 texture { Flange } }
cylinder { z*-4.4, 0, 3 texture { Black_Paint(.5,.25) } } torus { 2.8, .22 rotate x*90 translate z*-4.4 texture { Black_Paint(.5,.25) } }
object { Hexagon scale <2.6,1,2.6> rotate x*-90 translate z*-4.2 texture { Steel_Dull } }
#local Pulled = array[5] { 0, 1-Renewed, 0, 1-Renewed, 0 };
#local I = 0; #while (I < 5)
  #local A = 90-72*I;
  object { Stud(Pulled[I], I*50) translate y*-.98 translate x*-1.6
    #if (Pulled[I]) texture { Bruised } #else #if (Renewed & mod(I,2)) texture { Steel_Bright } #else texture { Stud_Steel translate I*4 } #end #end
    rotate y*90 translate <6.7*cos(radians(A)),6.7*sin(radians(A)),0> }
  // its number in chalk on the flange, nearer the rim
  text { ttf "cyrvetic.ttf" str(I+1,0,0) .06, 0 scale <1.5,1.5,1> translate <-.45,-.5,0> translate <8.4*cos(radians(A-15)),8.4*sin(radians(A-15)),.17>
    pigment { function { F_Mix(x*4,y*4,1) } color_map { [.4 S(222,222,218)] [.6 S(160,158,152)] } } }
  #local I = I+1; #end
Brick_Wall(60)
