// The whole offside panel against the workshop wall, brown. Left = 0: a dent low in front; 1: the dent eased, and a window six
// inches square scraped down to what the disc left.
#declare Fill = .9;
#include "workshop.inc"
#ifndef (Left) #declare Left = 0; #end
#declare F_Clear = function { 0 }
#include "panel.inc"
#include "offside.inc"
#include "smallwares.inc"
Eye(<92,66,-232>, <93,52,0>, 50, 0, <90,55,-3>)
Tube(<60,245,-120>, 1.4)
Window(<-150,120,-190>, <90,50,0>, 110, .95)
Floor()
Brick_Wall(14)
// front is to the right on this side: the dent is low there, as big as a dinner plate
#declare Dent = 2.2*(1-.8*Left);
union {
  difference { box { <0,0,0>, <188,92,4> } sphere { 0, 13 scale <1,1,Dent/13> translate <158,20,0> }
    texture { function { min(.99, max(0, F_Window(x,y,42)*Left+.1*Left)) } texture_map { [.05 Brown] [.1 pigment { S(58,38,27) }] [.2 pigment { S(60,40,29) }] [.22 Undercoat] [.44 Undercoat] [.46 Primer] [.6 Primer] [.65 T_Square] } } }
  rotate x*4.5 translate <0,9.5,4>
}
object { Soft_Box(<12,0,-4>, <30,9.5,12>, .4) texture { Ash_Old rotate y*90 } }
object { Soft_Box(<152,0,-5>, <171,9.5,12>, .4) texture { Ash_Old translate 30 rotate y*84 } }
