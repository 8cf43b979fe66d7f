// A period pair on a checked cloth on a folding table, outdoors in the sun.
#declare Fill = 1.7;
#declare Fill_Tint = rgb <.75,.9,1.15>;
#include "workshop.inc"
#include "lamp.inc"
#declare Lean = -.015;
Eye(<7,26,-56>, <0,7.6,0>, 47, .8, <0,9,-4>)
#if (!Depth) light_source { <-500,700,-480>, rgb <1.25,1.13,.94>*1.5 area_light x*9, y*9, 3, 3 adaptive 0 jitter circular orient } #end
#declare Black_Good = texture { pigment { S(20,20,21) } normal { bumps .03 scale 1.5 } finish { diffuse .6 specular .6 roughness .015 reflection { .02,.25 fresnel } conserve_energy } }
object { Headlamp(Black_Good, 15, Silvered, 1, 0) rotate <-6,24,0> translate <-12,9.7,0> interior { ior 1.5 } }
object { Headlamp(Black_Good, 15, Silvered, 1, 0) rotate <-8,-9,0> translate <12,9.7,2.5> interior { ior 1.5 } }
#declare Check = function { .5*F_Step(sin(x*.9),-.1,.1)+.5*F_Step(sin(z*.9),-.1,.1) }
height_field { function 200,200 { .3+.25*f_noise3d(x*4,y*4,2)+.2*(1-abs(2*f_noise3d(x*3+3,y*2,7)-1)) } smooth translate <-.5,-.55,-.5> scale <104,1.6,66>
  texture { pigment { function { Check(x,1,z)*.92+f_noise3d(x*3,1,z*3)*.08 } color_map { [.05 S(228,222,208)] [.45 S(196,116,104)] [.55 S(196,116,104)] [.95 S(158,44,42)] } } normal { function { sin(x*22)*.2+sin(z*22)*.2 } .2 } finish { diffuse .75 } } translate z*4 }
#local I = -1; #while (I < 2) box { <I*50-1,-74,-28>, <I*50+1,-1,-26> texture { Steel_Dull } } #local I = I+2; #end
// odds and ends of the stall, and the field behind
cylinder { <-38,0,20>, <-38,12,20>, 5 texture { Brass } } torus { 4,.8 translate <-38,12.4,20> texture { Brass } }
box { 0, <22,9,15> rotate y*18 translate <24,.5,20> texture { Ash_Old } }
plane { y, -75 pigment { function { F_Mix(x*.05,1,z*.02)*.6+F_Mix(x*.6,1,z*.6)*.4 } color_map { [.3 S(66,92,38)] [.7 S(118,138,66)] } } normal { granite .6 scale 4 } }
#local R = seed(5); #local I = 0;
#while (I < 26) sphere { 0, 150+rand(R)*130 scale <1,.9+rand(R)*.5,.6> translate <-1400+I*110,30,1100+rand(R)*300> pigment { granite scale 60 color_map { [0 S(38,60,26)] [.7 S(92,118,52)] } } normal { granite 1 scale 30 } } #local I = I+1; #end
box { <-260,-75,420>, <-60,110,520> pigment { S(196,200,204) } } box { <60,-75,520>, <300,70,640> pigment { S(70,84,110) } }
sky_sphere { pigment { gradient y color_map { [0 rgb <.72,.82,.95>*1.2] [.5 rgb <.3,.5,.9>] } } }
