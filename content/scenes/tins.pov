// The shelf at the year's end: paint tins, a solvent can, a jar of brushes, grease, a tag; one gap in the dust.
#declare Base = .16;
#include "stage.inc"
Look(<-4,24,-76>, <3,7,0>, 62)
Soft_Light(<-30,70,-60>, <0,5,0>, 40, rgb <.95,1,.95>*1.1)
Soft_Light(<60,30,-60>, <0,5,0>, 8, rgb <1,.76,.48>*.6)
Fill_Light(<0,40,-200>, rgb <.9,.95,1>*.16)
#declare T_Tin = texture { pigment { function { F_Mix(x*.4,y*.4,z*.4) } color_map { [.3 S(132,130,124)] [.6 S(170,168,160)] [.72 S(112,80,56)] } } finish { diffuse .5 specular .6 roughness .03 metallic reflection { .1 metallic } } }
Brick_Wall(16)
// Dust everywhere on the shelf but where a tin stood.
#declare F_Gap = function { F_Step(sqrt((x-12)*(x-12)+z*z), 5.5, 5.9) }
object { Rounded(<-90,-3.4,-13>, <90,0,16>, .3) texture { function { F_Gap(x,y,z)*(.5+.5*F_Step(y,-.4,-.05)) } texture_map { [.3 Ash_Old] [.75 pigment { function { F_Mix(x*.8,y,z*.8) } color_map { [.3 S(138,130,116)] [.7 S(172,164,150)] } } normal { granite .15 scale .6 } finish { diffuse .75 }] } } }
#macro Paint_Tin(R, H, Paint, Seed)
  #local Q = seed(Seed);
  union {
    cylinder { y*.3, y*(H-.2), R } torus { R, .3 translate y*.4 } torus { R-.1, .34 translate y*H } cylinder { y*(H-.6), y*(H+.05), R-1 } torus { R-1.1, .25 translate y*(H+.1) }
    difference { torus { R+.7, .14 scale <1,1.5,1> rotate x*90 } box { <-20,0,-20>, <20,20,20> } rotate x*-8 translate <0,H-2,-1.4> }
    cylinder { y*2.2, y*(H-3.4), R+.04 open pigment { S(212,202,178)*.8 } }
    #local I = 0;
    #while (I < 9) #local A = -pi/2+(rand(Q)-.5)*2.6; #local D = 1+rand(Q)*rand(Q)*H*.75;
#local Run = <cos(A)*(R+.1),0,sin(A)*(R+.1)>; #local W = .32+rand(Q)*.2;
      union { cone { Run+y*H, .55, Run+y*(H-D), W } sphere { Run+y*(H-D), W } pigment { Paint } finish { specular .5 roughness .02 } }
      #local I = I+1; #end
    torus { R-.1, .38 scale <1,.8,1> translate y*H pigment { Paint } finish { specular .5 roughness .02 } }
    texture { T_Tin }
  }
#end
object { Paint_Tin(5.6, 13, S(232,219,184), 2) translate <-33,0,1> }
object { Paint_Tin(5.2, 11.5, S(126,128,126), 5) translate <-20,0,-1> }
object { Paint_Tin(4.4, 9.5, S(18,18,18), 9) translate <-8.4,0,-2> }
// The gap stands at x = 12. Then grease, solvent, brushes.
union { lathe { linear_spline 6, <0,-1>, <4.4,0>, <4.6,.6>, <4.9,6>, <4.9,7>, <0,7.2> } cylinder { y*5.7, y*7.5, 5.2 } pigment { S(36,74,112) } finish { specular .4 roughness .03 } translate <1.8,0,2> }
union {
  Rounded(<-6,0,-3.4>, <6,17,3.4>, .7) Rounded(<-6.2,16,-3.6>, <6.2,17.2,3.6>, .5) cylinder { <4,17,0>, <4,19.6,0>, 1.5 }
  sphere_sweep { cubic_spline 6, <-5,16,0>, .5, <-4.6,18,0>, .5, <-3,19.6,0>, .5, <0,19.6,0>, .5, <1,18,0>, .5, <1.2,16,0>, .5 }
  texture { T_Tin } rotate y*-14 translate <25,0,1>
}
box { <-3.6,4,-3.5>, <3.6,11,-3.44> pigment { S(176,60,40) } rotate y*-14 translate <25,0,1> }
difference { cylinder { 0, y*9.6, 3.5 } cylinder { y*.5, y*12, 3.1 } pigment { rgbt <.82,.9,.86,.72> } finish { specular .8 roughness .005 reflection .06 } translate <38,0,0> }
#macro Brush(W, H, Tint) union { Rounded(<-W,H,-.5>, <W,H+3.4,.5>, .3) Rounded(<-W-.1,H-2,-.6>, <W+.1,H+.2,.6>, .2) cone { y*(H-2), .7, y*(H-14), .5 pigment { Tint } }
  pigment { function { f_noise3d(x*9,y*.5,z*9) } color_map { [.3 S(60,46,34)] [.7 S(150,122,84)] } } } #end
object { Brush(1.6, 17, rgb <.5,.1,.06>) rotate z*-11 rotate y*20 translate <36.5,0,.5> } object { Brush(1.1, 16, rgb <.6,.4,.2>) rotate z*12 rotate y*-30 translate <39,0,.6> } object { Brush(2.1, 15.5, rgb <.1,.14,.2>) rotate x*8 translate <38,0,0> }
// A manila tag hanging from the shelf's edge on twine.
cylinder { <-14,-.2,-13.4>, <-13.6,-5,-13.5>, .14 texture { Twine } } 
union { difference { Rounded(<-2.2,-9,-.06>, <2.2,0,.06>, .05) cylinder { <0,-.9,-1>, <0,-.9,1>, .35 } } texture { Manila } rotate z*4 translate <-13.6,-4.2,-13.5> }
