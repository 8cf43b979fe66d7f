// Twelve bread-tray runners side by side on the floor; the third, seventh and eighth are new.
#declare Base = .18;
#include "stage.inc"
Look(<-8,118,-82>, <0,0,-3>, 45)
Door_Light(<-120,110,-70>, <0,0,0>, 2.3)
Floor()
// Worn hollow on top in the middle by Worn; one edge rounded.
#macro Runner(Worn)
  difference {
    union { box { <-45,0,-1.75>, <45,2.2,1> } box { <-45,0,-1.75>, <45,1.45,1.75> } cylinder { <-45,1.45,1>, <45,1.45,1>, .75 } }
    #if (Worn > 0) cylinder { <0,2.2+900-Worn,-9>, <0,2.2+900-Worn,9>, 900 } #end
    #local I = -1; #while (I < 2) cone { <I*38,2.4,0>, .45, <I*38,1.4,0>, .15 pigment { rgb .03 } } #local I = I+1; #end
  }
#end
#local R = seed(12); #local I = 1;
#while (I < 13)
  object { Runner(((I=3)|(I=7)|(I=8) ? 0 : .35+rand(R)*.4))
    #if ((I=3)|(I=7)|(I=8)) texture { Ash_New translate <I*30,I*7,I*11> } #else texture { Ash_Old translate <I*30,I*7,I*11> } #end
    scale <1,1,1.15> rotate y*(rand(R)-.5)*1 translate <(rand(R)-.5)*1.6,0,29-I*5.2> }
  #local I = I+1;
#end
