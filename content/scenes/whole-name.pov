// The whole nearside panel against the workshop wall. Cleared = 1: to the cream and letters; 0: brown, as it came off the van.
#declare Fill = .9;
#ifndef (Cleared) #declare Cleared = 1; #end
#include "workshop.inc"
#declare F_Clear = function { (.9 - .5*F_Step(F_Mix(x*.3,y*.4,4)*.6+F_Mix(x*1.6,y*1.9,6)*.4, .6,.7)*F_Step(max(abs(x-94)/94, abs(y-46)/46), .93, .99))*Cleared }
#declare Wear = .62;
#include "nearside.inc"
#include "panel.inc"
#include "smallwares.inc"
Eye(<92,66,-232>, <93,52,0>, 50, 0, <90,55,-3>)
Tube(<60,245,-120>, 1.4)
Window(<-150,120,-190>, <90,50,0>, 110, .95)
Floor()
Brick_Wall(14)
union {
  box { <0,0,0>, <188,92,.2> texture { T_Panel } interior { ior 1.48 } }
  object { Ladder_Hole_Marks(texture { pigment { rgb .015 } }) }
  box { <0,0,.2>, <4,92,3> texture { Ash_Old rotate z*90 } }
  box { <184,0,.2>, <188,92,3> texture { Ash_Old rotate z*90 } }
  rotate x*4.5 translate <0,9.5,4>
}
object { Soft_Box(<12,0,-4>, <30,9.5,12>, .4) texture { Ash_Old rotate y*90 } }
object { Soft_Box(<152,0,-5>, <171,9.5,12>, .4) texture { Ash_Old translate 30 rotate y*84 } }
#if (Cleared)
cylinder { <-31,0,-6>, <-24,170,12>, 1.25 texture { Ash_Old rotate z*90 } }
object { Soft_Box(<-16,0,-3>, <16,5,3>, .5) texture { Beech translate 50 } translate <-31,6,-6> }
#local R = seed(3); #local I = 0; #while (I < 420)
  #local X = rand(R)*30-15; #local Z = rand(R)*5-2.5;
  cylinder { <X,6.5,Z>, <X*1.08+rand(R)-.5,0,Z*1.5+rand(R)-.5>, .14 pigment { S(96,74,48) } translate <-31,0,-6> }
  #local I = I+1; #end
object { Jam_Jar(.35, rgb <.6,.5,.36>) translate <206,0,-12> }
object { Rag(9,7,5) texture { Rag_Cloth } scale <1,.7,1> translate <224,0,-4> }
#end
