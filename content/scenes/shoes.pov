// Four rear brake shoes in an enamel tray. Left = 0: thin old linings, on wet newspaper, a wet cloth beside; 1: back, lined anew, dry.
#declare Fill = .5;
#ifndef (Left) #declare Left = 0; #end
#include "workshop.inc"
#include "smallwares.inc"
#declare Lean = -.03;
Eye(<-1,50,-38>, <3,0,-1.5>, 56, .35, <0,2,-2>)
Tube(<10,140,0>, 1.1)
Hand_Lamp(<38,30,-8>, .5, 45)
Bench(-44, 70, 33)
#declare Enamel = texture { pigment { S(222,224,220) } normal { bumps .02 scale 3 } finish { diffuse .75 specular .7 roughness .01 reflection { .02,.2 fresnel } conserve_energy } }
#declare Rim = texture { function { F_Step(F_Mix(x*.7,y*.7,z*.7),.63,.66) } texture_map { [0 pigment { S(34,52,96) } finish { specular .7 roughness .01 }] [1 pigment { S(24,22,24) } finish { specular .3 }] } }
union {
  difference { object { Soft_Box(<-25,0,-16>, <25,4.4,16>, 1.6) } object { Soft_Box(<-24.5,.5,-15.5>, <24.5,9,15.5>, 1.5) } box { <-30,4,-30>, <30,9,30> } texture { Enamel } interior { ior 1.5 } }
  #local I = -1; #while (I < 2) cylinder { <-24,4,I*15.8>, <24,4,I*15.8>, .4 texture { Rim } } cylinder { <I*24.8,4,-15>, <I*24.8,4,15>, .4 texture { Rim } } #local I = I+2; #end
}
#if (!Left)
// wet paper: grey, clinging, print showing
height_field { function 200,200 { .35+.3*f_noise3d(x*5,y*5,2)+.25*(1-abs(2*f_noise3d(x*4+3,y*3,7)-1)) } smooth translate <-.5,-.3,-.5> scale <47,1.1,29>
  texture { pigment { image_pattern { png "print.png" interpolate 2 } rotate x*90 translate <-.5,0,-.5> scale <46,1,30> pigment_map { [.2 S(58,56,54)] [.9 function { F_Mix(x*.25,1,z*.25) } color_map { [.3 S(132,128,118)] [.7 S(178,172,158)] }] } }
    finish { diffuse .75 specular .55 roughness .015 reflection { .01,.12 fresnel } conserve_energy } } interior { ior 1.33 } translate y*.55 }
#end
#if (Left)
#declare Shoe_Steel = texture { pigment { S(30,30,31) } finish { diffuse .65 specular .5 roughness .02 reflection .03 } }
#declare Lining = texture { pigment { function { F_Mix(x*3,y*3,z*3) } color_map { [.3 S(92,84,66)] [.6 S(116,106,82)] [.8 S(150,128,84)] } } normal { granite .12 scale .4 } finish { diffuse .8 specular .1 roughness .06 } }
#else
#declare Shoe_Steel = texture { function { F_Step(F_Mix(x*.8,y*.8,z*.8),.5,.66) } texture_map { [0 pigment { S(44,42,40) } finish { diffuse .6 specular .5 roughness .03 }] [1 Rust] } }
#declare Lining = texture { pigment { function { F_Mix(x*2.5,y*2.5,z*2.5) } color_map { [.3 S(112,108,102)] [.6 S(140,136,128)] [.8 S(92,86,78)] } } normal { granite .2 scale .4 } finish { diffuse .75 specular .35 roughness .03 } }
#end
#declare Thick = 11.62+.42*Left;
// lies on its edge of the web, arch towards +z: platform 4 wide standing up, web in the middle of it
#macro Shoe()
  intersection {
    union {
      difference { cylinder { 0, y*4, 11.2 } cylinder { -y, y*5, 10.85 } texture { Shoe_Steel } }
      difference { cylinder { y*1.8, y*2.2, 11 } cylinder { y*-1, y*5, 8 } cylinder { <0,-1,9.4>, <0,5,9.4>, .7 } cylinder { <5.4,-1,7.9>, <5.4,5,7.9>, .4 } cylinder { <-5.4,-1,7.9>, <-5.4,5,7.9>, .4 } texture { Shoe_Steel translate 8 } }
      difference { cylinder { y*.1, y*3.9, Thick } cylinder { -y, y*5, 11.2 } box { -14, 14 rotate y*0 translate <0,0,-14> } plane { z, 3.2 }
        #local I = -2; #while (I < 3) cylinder { <0,1,9>, <0,1,13>, .28 rotate y*I*22 texture { Copper } } cylinder { <0,3,9>, <0,3,13>, .28 rotate y*(I*22+7) texture { Copper } } #local I = I+1; #end
        texture { Lining } }
    }
    plane { z, 0 inverse rotate y*17 } plane { z, 0 inverse rotate y*-17 }
  }
#end
object { Shoe() texture { Shoe_Steel } rotate y*7 translate <-11.6,1,-14> }
object { Shoe() texture { Shoe_Steel translate 5 } rotate y*-6 translate <-11.4,1,1.4> }
object { Shoe() texture { Shoe_Steel } rotate y*-5 translate <12,1,-13.6> }
object { Shoe() texture { Shoe_Steel translate 9 } rotate y*8 translate <11.8,1,1> }
#if (!Left)
object { Rag(11,8,6) texture { pigment { S(92,104,112) } normal { function { sin(x*40)+sin(z*40) } .1 } finish { diffuse .75 specular .3 roughness .03 } } scale <.9,.7,.9> rotate y*64 translate <34,0,-6> }
// drops
#local R = seed(5); #local I = 0;
#while (I < 50) sphere { 0, .15+pow(rand(R),3)*.5 scale <1,.3,1> translate <-34+rand(R)*72,.02,-19-rand(R)*6> pigment { rgbt <.3,.26,.2,.7> } finish { specular 1 roughness .004 diffuse .3 reflection { .02,.3 fresnel } conserve_energy } interior { ior 1.33 } } #local I = I+1; #end
#end
