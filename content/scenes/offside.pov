// The offside panel, brown, with a cleared square of 150 mm: sander's swirls in bright sheet, a rag of primer, no letters.
#declare Fill = .55;
#include "workshop.inc"
#declare F_Clear = function { 0 }
#include "panel.inc"
#include "smallwares.inc"
#include "offside.inc"
Eye(<55,62,-46>, <71,51.4,0>, 48, .4, <70,52,0>)
Tube(<40,150,-80>, 1)
Hand_Lamp(<104,66,-34>, .65, 52)
Floor() Brick_Wall(60)
box { <0,0,0>, <188,92,.2> texture { function { min(.99, max(0, F_Window(x,y,70)+.1)) } texture_map { [.05 Brown] [.1 pigment { S(58,38,27) }] [.2 pigment { S(60,40,29) }] [.22 Undercoat] [.44 Undercoat] [.46 Primer] [.6 Primer] [.65 T_Square] } } }
// pencilled size beside it, and runs of stripper below
box { <60,30,-.012>, <82,44.6,-.01> no_shadow texture { pigment { function { F_Step(f_noise3d(x*.8,y*.05,3)*.9+f_noise3d(x*3,y*.2,1)*.3-(44.5-y)*.05, .62,.7) } color_map { [0 srgbt <.25,.16,.1,1>] [1 srgbt <.25,.16,.1,.35>] } } finish { specular .5 roughness .02 } } }
