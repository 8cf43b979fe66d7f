// The old grey sill and the new pale one side by side on two trestles; the old one lacks an end.
#declare Base = .15;
#include "stage.inc"
Look(<-56,192,-128>, <0,66,-4>, 52)
Door_Light(<-170,210,-130>, <0,75,0>, 1.5)
Floor() Brick_Wall(170)
object { Trestle() translate x*-52 } object { Trestle() translate x*52 }
#macro Sill(Cut)
  difference {
    Rounded(<-75,0,-3.25>, <75,5.5,3.25>, .2)
    box { <-90,3.6,-4>, <90,6,-1.7> }
    #local I = 0; #while (I < 4) box { <-58+I*36,2,-.4>, <-51+I*36,6,1.7> } #local I = I+1; #end
    #if (Cut) #local R = seed(3); #local J = 0;
      #while (J < 34) box { <-30,-9,-.35>, <6+rand(R)*7,9,.35> rotate <0,(rand(R)-.5)*14,0> translate <-76+rand(R)*10,0,-3.2+J*.19> } #local J = J+1; #end
    #end
  }
#end
object { Sill(1) texture { Ash_Old } scale <1,1.25,1.3> rotate y*1 translate <0,75,-17> }
object { Sill(0) texture { Ash_New } scale <1,1.25,1.3> translate <0,75,9> }
