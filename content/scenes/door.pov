// The near rear door against the wall. Left = 1: upper panel down to the cream and HOT AT SIX, lower half brown; 0: all brown.
#declare Fill = .7;
#ifndef (Left) #declare Left = 1; #end
#include "workshop.inc"
#declare Sheet = "hot-at-six.png";
#declare Sheet_Size = <54,56,1>;
#declare F_Front = function { y - 1.5 - 3*(F_Mix(x*.07,3,1)-.5)*2 - 1.8*(f_noise3d(x*.5,y*.2,2)-.5) - .8*(f_noise3d(x*2.2,y*1.2,5)-.5) }
#declare F_Clear = function { Left*(F_Step(F_Front(x,y,z)/3.2 + .5, 0, 1) - .3*F_Step(F_Mix(x*.12+3,y*.2,4)*.6+f_noise3d(x*.5,y*3,6)*.4, .66,.8)) }
#declare Wear = .5;
#include "panel.inc"
#include "smallwares.inc"
#declare Lean = .012;
Eye(<20,92,-205>, <36,68,0>, 33, 0, <35,70,0>)
Tube(<-10,235,-110>, 1.5)
Window(<-170,120,-150>, <35,70,0>, 100, .9)
Floor()
Brick_Wall(21)
union {
  difference {
    object { Soft_Box(<0,0,0>, <69.6,135,4>, .5) }
    object { Soft_Box(<8,10,-2>, <62,60,.9>, .5) } object { Soft_Box(<8,70,-2>, <62,126,.9>, .5) }
    texture { Brown }
  }
  box { <8,10,.8>, <62,60,.95> texture { Brown translate <7,30,2> } }
  // the letters' panel, its own paint; the cream runs out over the rail round it
  box { 0, <54,56,.2> texture { T_Panel } translate <8,70,.65> }
  #local I = 0; #while (I < 2)
    union {
      prism { -.35, 0, 6, <0,-2.6>, <31,-2.2>, <52,-1>, <52,1>, <31,2.2>, <0,2.6> rotate x*90 }
      sphere { 0, 1.6 scale <1,1,.5> translate <52,0,-.2> } cylinder { <-1,-3.4,-.9>, <-1,3.4,-.9>, 1.3 }
      #local K = 0; #while (K < 4) sphere { <6+K*13,0,-.4>, .75 } #local K = K+1; #end
      texture { #if (Left) Black_Paint(.35,.25) #else Brown #end } translate <1,22+I*90,-.25> }
    #local I = I+1; #end
  union { cylinder { z*-1, z*.2, 3.1 } cylinder { z*-4.4, 0, 1 } object { Soft_Box(<-6.5,-1,-5.4>, <1.6,1,-3.8>, .6) } sphere { <-7,0,-4.6>, 1.7 } rotate z*18 translate <64.8,65,0> texture { Brass } }
  rotate x*6.5 translate <0,1.2,0>
}
object { Soft_Box(<-4,0,-3>, <18,1.3,9>, .2) texture { Ash_Old } } object { Soft_Box(<50,0,-3>, <74,1.3,9>, .2) texture { Ash_Old translate 9 } }
#if (Left) object { Jam_Jar(.3, rgb <.5,.34,.18>) translate <88,0,-4> }
object { Rag(9,7,8) texture { Calico scale .6 } scale <1,.7,1> translate <-20,0,-14> } #end
