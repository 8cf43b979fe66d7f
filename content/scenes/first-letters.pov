// The panel flat on trestles, flatted in an oval: cream, and the upper halves of N S L.
#declare Fill = .45;
#include "workshop.inc"
#declare F_Oval = function { sqrt(pow((x-43.5)/17.5,2) + pow((y-70.5)/9.6,2)) + (F_Mix(x*.16,y*.2,2)-.5)*.34 + (f_noise3d(x*.9,y*1.1,1)-.5)*.09 }
// No brown has come off below the middle of the letters.
#declare F_Clear = function { F_Step(1.32 - F_Oval(x,y,z)*.9 - max(0,(67.2-y)*.16) + (F_Streak0(x,y)-.5)*.07, .12, 1) }
#declare Wear = .55;
#include "panel.inc"
#include "smallwares.inc"
#declare Lean = .02;
Eye(<38,46,21>, <45.5,0,67.5>, 52, .4, <43,0,70>)
Tube(<30,140,20>, .75)
Hand_Lamp(<-8,15,88>, 1.7, 55)
plane { y, -78 texture { Concrete } }
// slurry: brown water standing and drying round the place, over a flat sheet turned up to lie down
#declare F_Slurry = function { F_Step(1-abs(F_Oval(x,y,z)-1.28)*1.15 + (F_Mix(x*.18+5,y*.25,4)-.5)*1.5 + (f_noise3d(x*.8,y*.9,3)-.5)*.5, .46, .62) }
#declare T_Wet = texture {
  pigment { function { F_Slurry(x,y,z) } pigment_map {
    [0 srgbt <.42,.32,.26,1>] [.5 srgbt <.40,.3,.24,.6>] [1 function { F_Mix(x*1.1,y*1.3,2) } color_map { [.3 srgbt <.5,.39,.33,.3>] [.7 srgbt <.38,.28,.22,.5>] }] } }
  normal { bumps .05 scale 1.2 }
  finish { diffuse .75 specular .9 roughness .006 reflection { 0,.3 fresnel } conserve_energy }
}
union {
  box { <0,0,0>, <188,92,.2> texture { T_Panel } }
  box { <15,50,-.02>, <75,90,-.01> texture { T_Wet } interior { ior 1.33 } no_shadow }
  #local R = seed(21); #local I = 0;
  #while (I < 46)
    #local A = rand(R)*6.283; #local D = .95+pow(rand(R),1.5)*.75;
    sphere { 0, .12+pow(rand(R),3)*.55 scale <1,1,.28> translate <43.5+cos(A)*18*D, 70.5+sin(A)*11*D, 0>
      texture { pigment { srgbt <.45,.34,.28,.5> } finish { diffuse .6 specular 1 roughness .003 reflection { 0,.5 fresnel } conserve_energy } } interior { ior 1.33 } }
    #local I = I+1;
  #end
  rotate x*90
}
object { Sanding_Block() rotate y*-27 translate <61.5,.02,64> }
object { Rag(8,6,3) texture { Rag_Cloth } scale <1.05,.42,1> rotate y*40 translate <22,0,62> }
// the bucket beyond, on the floor between the trestles, and the far trestle's top
object { Soft_Box(<-20,-12,0>, <210,-.3,7>, .4) texture { Ash_Old } translate z*80 }
