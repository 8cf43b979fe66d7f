// The whole nearside panel, cleared, against the workshop wall.
#declare Fill = .75;
#include "workshop.inc"
// Three filled bolt holes of the ironmonger's ladder bracket, low right.
#declare F_Clear = function { .9 - .5*F_Step(F_Mix(x*.3,y*.4,4)*.6+F_Mix(x*1.6,y*1.9,6)*.4, .66,.74)*F_Step(max(abs(x-94)/94, abs(y-46)/46), .955, 1) }
#declare Wear = .62;
#include "panel.inc"
Eye(<92,66,-232>, <93,52,0>, 50, .7, <90,55,-3>)
Tube(<70,250,-150>, 2.1)
Window(<-190,150,-260>, <90,50,0>, 110, .55)
Floor()
Brick_Wall(14)
union {
  box { <0,0,0>, <188,92,.2> texture { T_Panel } interior { ior 1.48 } }
  #local I = 0; #while (I < 3)
    cylinder { <150+I*7.2,13.2+I*.15,-.04>, <150+I*7.2,13.2+I*.15,.3>, .75 texture { Primer } }
    #local I = I+1; #end
  box { <0,0,.2>, <4,92,3> texture { Ash_Old rotate z*90 } }
  box { <184,0,.2>, <188,92,3> texture { Ash_Old rotate z*90 } }
  rotate x*4.5 translate <0,9.5,4>
}
object { Soft_Box(<12,0,-4>, <30,9.5,12>, .4) texture { Ash_Old rotate y*90 } }
object { Soft_Box(<152,0,-5>, <171,9.5,12>, .4) texture { Ash_Old translate 30 rotate y*84 } }
