// The offside panel, brown, with a cleared square of 150 mm: sander's swirls in bright sheet, a rag of primer, no letters.
#declare Fill = .55;
#include "workshop.inc"
#declare F_Sq = function { 7.5 - max(abs(x-70), abs(y-52)) + (f_noise3d(x*.7,y*.7,1)-.5)*.7 + (f_noise3d(x*3.5,y*3.5,2)-.5)*.3 }
#declare F_Clear = function { 0 }
#include "panel.inc"
#include "smallwares.inc"
#declare I_Swirl = function { pigment { image_map { png "swirls.png" interpolate 2 } scale 34 } }
#declare Sanded = texture { pigment { function { I_Swirl(x,y,0).gray*.9 + I_Swirl(y*.83+3,x*.83,0).gray*.8 + I_Swirl(x*1.7+5,y*1.7,0).gray*.5 + F_Mix(x*.3,y*.3,1)*.25 } color_map { [.08 S(150,151,153)] [.3 S(186,187,189)] [.9 S(232,233,235)] } }
  normal { function { I_Swirl(x,y,0).gray + I_Swirl(y*.83+3,x*.83,0).gray*.7 } .5 } finish { diffuse .42 specular .85 roughness .03 metallic reflection { .14 metallic } } }
#declare F_Rag_Of_Primer = function { F_Step(F_Mix(x*.16+1.3,y*.2,2)*.8+F_Mix(x*1.1,y*1.1,4)*.25 - .035*(pow(x-73.5,2)+pow(y-55.5,2))/6, .30,.33) }
Eye(<55,62,-46>, <71,51.4,0>, 48, .4, <70,52,0>)
Tube(<40,150,-80>, 1)
Hand_Lamp(<104,66,-34>, .65, 52)
Floor() Brick_Wall(60)
#declare T_Square = texture { function { F_Rag_Of_Primer(x,y,z) } texture_map { [.4 Sanded] [.6 Primer] } }
box { <0,0,0>, <188,92,.2> texture { function { min(.99, max(0, F_Sq(x,y,z)+.1)) } texture_map { [.05 Brown] [.1 pigment { S(58,38,27) }] [.2 pigment { S(60,40,29) }] [.22 Undercoat] [.44 Undercoat] [.46 Primer] [.6 Primer] [.65 T_Square] } } }
// pencilled size beside it, and runs of stripper below
box { <60,30,-.012>, <82,44.6,-.01> no_shadow texture { pigment { function { F_Step(f_noise3d(x*.8,y*.05,3)*.9+f_noise3d(x*3,y*.2,1)*.3-(44.5-y)*.05, .62,.7) } color_map { [0 srgbt <.25,.16,.1,1>] [1 srgbt <.25,.16,.1,.35>] } } finish { specular .5 roughness .02 } } }
