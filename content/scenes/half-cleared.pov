// The nearside panel on its stand of trestle boards: down to the cream as far as the ampersand, and no lower than the top line.
#declare Fill = .7;
#include "workshop.inc"
// The clearing ends right of the ampersand and under the top line, ragged by the day's work.
#declare F_Edge = function { 18*(F_Mix(y*.06,3,1)-.5) + 6*(F_Mix(y*.22,x*.05,8)-.5)*2 + 3*(f_noise3d(y*.5,x*.1,2)-.5) + 1.6*(f_noise3d(y*2.2,x*1.2,5)-.5) }
#declare F_Under = function { 14*(F_Mix(x*.05,7,1)-.5) + 5*(F_Mix(x*.2,y*.05,8)-.5) + 2*(f_noise3d(x*.6,y*.2,2)-.5) + 1.2*(f_noise3d(x*2.1,y*1.3,5)-.5) }
#declare F_Front = function { max(x - 96 - F_Edge(x,y,z), 54 - y - F_Under(x,y,z)) }
// Cleared in February: the NSL patch lies within; the last R and the windows A to D do not.
#declare F_R = function { 1 - F_Step(max(abs(x-173)/8.6, abs(y-66)/9.6) + (f_noise3d(x*.7,y*.7,3)-.5)*.3, .94, 1.02) }
#declare F_Square = function(x,y,c) { F_Step(2.5 - max(abs(x-c), abs(y-18.6)) + (f_noise3d(x*1.3,y*1.3,1)-.5)*.5, -.1, .3) }
#declare F_Day = function { F_Step(-F_Front(x,y,z)/4 + .5 + (F_Mix(x*.9,y*1.4,3)-.5)*.35, 0, 1)
  - .45*F_Step(F_Mix(x*.09+3,y*.13,4)*.55+f_noise3d(x*.5,y*3.2,6)*.3+f_noise3d(x*2,y*6,2)*.15, .60,.72)*F_Step(-F_Front(x,y,z),-4,26+14) }
#declare F_Clear = function { max(max(F_Day(x,y,z), F_R(x,y,z)), max(max(F_Square(x,y,145.6), F_Square(x,y,155)*.6), F_Square(x,y,164.4))) }
#include "nearside.inc"
#declare Wear = .6;
#include "panel.inc"
#include "smallwares.inc"
#declare Lean = -.008;
Eye(<72,80,-186>, <87,58,0>, 52, 0, <90,55,-3>)
Tube(<130,225,-130>, 2)
Hand_Lamp(<-50,112,-120>, .42, 120)
Floor()
Brick_Wall(46)
union {
  box { <0,0,0>, <188,92,.2> texture { T_Panel } interior { ior 1.48 } }
  object { Ladder_Hole_Marks(texture { pigment { rgb .015 } }) }
  rotate x*9 translate <0,22,4>
}
// the trestle board below with the day's leavings
object { Soft_Box(<-30,17,-30>, <230,21.4,16>, .3) texture { Ash_Old rotate y*2 translate 9 } }
#local R = seed(4);
#local I = 0; #while (I < 6)
  object { Soft_Box(<0,0,0>,<7,17,5>,.3) texture { Ash_Old rotate z*90 } translate <-10+I*45,0,-6> }
  #local I = I+1; #end
object { Jam_Jar(.45, rgb <.55,.36,.18>) translate <54,21.4,-19> }
object { Jam_Jar(.2, rgb <.7,.7,.66>) scale .9 translate <64.5,21.4,-12> }
#local I = 0; #while (I < 11)
  object { Swab(rand(R)) rotate y*(rand(R)*360) translate <70+rand(R)*26,21.4,-10-rand(R)*16> }
  #local I = I+1; #end
object { Rag(12,9,3) scale <1,.9,1> texture { Rag_Cloth } translate <112,21.4,-15> }
