// Five wheel studs on a white rag; threads of the second and fourth pulled flat near the tip.
#declare Fill = .5;
#include "workshop.inc"
#include "ironwork.inc"
#include "smallwares.inc"
#declare Lean = .03;
Eye(<.4,9.6,-10.2>, <1.45,.7,-.1>, 63, .3, <1.6,1.2,-1.6>)
Tube(<20,140,-30>, .75)
Hand_Lamp(<21,8.5,-10>, .95, 26)
Bench(-30, 60, 5)
height_field { function 260,260 { .25+.16*f_noise3d(x*5,y*5,2)+.07*f_noise3d(x*17,y*14,4)+.10*(1-abs(2*f_noise3d(x*3.4+2,y*2.2,7)-1)) } smooth translate <-.5,0,-.5> scale <34,1.9,26> translate <2,-.62,3>
  texture { pigment { function { F_Mix(x*.5,y,z*.5)*.7+F_Step(F_Mix(x*.23,3,z*.23),.55,.75)*.5*F_Mix(x*2,2,z*2) } color_map { [.25 S(206,203,196)] [.5 S(226,224,218)] [.8 S(150,140,128)] } }
    normal { function { (sin(x*62)+sin(z*62))*.08 + F_Mix(x*1.5,1,z*1.5)*.6 } .25 } finish { diffuse .82 } } }
#declare Stud_Steel = texture { function { F_Step(F_Mix(x*1.3,y*1.3,z*1.3) + F_Step(1.7-x,0,.5)*.15, .5,.7) }
  texture_map { [0 pigment { S(150,146,138) } normal { granite .03 scale .2 } finish { diffuse .45 specular .7 roughness .03 metallic reflection { .1 metallic } }] [1 pigment { S(104,76,56) } normal { granite .08 scale .2 } finish { diffuse .6 specular .4 roughness .05 }] } }
#declare Bruised = texture { function { F_Step(x + (f_noise3d(x*3,y*3,z*3)-.5)*.5, 2.9, 3.2) } texture_map { [0 Stud_Steel] [1 pigment { S(190,186,176) } normal { granite .3 scale .15 } finish { diffuse .4 specular .9 roughness .02 metallic reflection { .2 metallic } }] } }
#local Pulled = array[5]{0,1,0,1,0};
#local I = 0; #while (I < 5)
  #local P = Pulled[I];
  object { Stud(P, I*50) #if (P) texture { Bruised } #else texture { Stud_Steel translate I*4 } #end
    translate <-2.3,0,0> rotate y*(83+I*3.4) translate <-4.9+I*3.15+(I=2)*.3,.06,.1> }
  #local I = I+1; #end
