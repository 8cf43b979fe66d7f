// The bread-tray runners on the floor in their order. Made = 0: nine, with the gaps of the three that are lost. Made = 1: all twelve.
#declare Fill = .7;
#ifndef (Made) #declare Made = 0; #end
#include "workshop.inc"
#declare Lean = .015;
Eye(<14,112,-92>, <1,0,-1>, 47, 0, <0,0,0>)
Window(<-130,150,60>, <0,0,0>, 90, 1.5)
Tube(<60,230,-40>, .9)
Floor()
#macro Runner(Worn)
  difference {
    union { box { <-45,0,-1.75>, <45,2.2,1> } box { <-45,0,-1.75>, <45,1.45,1.75> } cylinder { <-45,1.45,1>, <45,1.45,1>, .75 } }
    #if (Worn) cylinder { <0,2.2+900-Worn,-9>, <0,2.2+900-Worn,9>, 900 } #end
    #local I = -1; #while (I < 2) cone { <I*38,2.4,0>, .5, <I*38,1.2,0>, .18 pigment { rgb .02 } } #local I = I+1; #end
  }
#end
#local R = seed(12); #local I = 1;
#while (I < 13)
  #local Lost = (I=3); #if (I=7) #local Lost = 1; #end #if (I=8) #local Lost = 1; #end
  #local W = .35+rand(R)*.4; #local T = (rand(R)-.5)*1.6; #local X = (rand(R)-.5)*2.4;
  #if (Lost & Made) object { Runner(0) texture { Ash_New translate <I*30,I*7,I*11> } rotate y*T translate <X,0,34-I*5.8> } #end
  #if (!Lost) object { Runner(W) texture { Ash_Old translate <I*30,I*7,I*11> } rotate y*T translate <X,0,34-I*5.8> } #end
  #local I = I+1;
#end
// a folding rule left beside them
object { Soft_Box(<0,0,0>, <23,.5,1.6>, .1) pigment { S(206,176,92) } rotate y*12 translate <-8,.02,-44> }
