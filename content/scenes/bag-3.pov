// Bag 3 with its tag, four screws and four cup washers beside it.
#declare Fill = .5;
#include "workshop.inc"
#include "ironwork.inc"
#include "bags.inc"
#declare Lean = .02;
Eye(<4,19,-31>, <2.5,2.6,0>, 44, .7, <1,3,-4>)
Tube(<-10,140,10>, 1)
Hand_Lamp(<38,24,-16>, .55, 45)
Bench(-26, 60, 3)
Brick_Wall(62)
object { Calico_Bag(3) rotate y*-14 translate <-4.5,0,3> }
object { Tag("three.png", -9) translate <-2.2,.02,-6.4> rotate z*1 }
object { String_Path(array[8]{<-4.5,6.8,3>,<-5.6,6.8,1.4>,<-6.9,3.6,-1.4>,<-6.8,.6,-4.2>,<-4.8,.16,-6.9>,<-2.4,.16,-7>,<-1.4,.12,-6.5>,<-1.2,.1,-6.4>}, .11) texture { Twine } }
#local R = seed(8); #local I = 0;
#local PS = array[4]{<6.2,0,-6.2>,<8.8,0,-3.1>,<7.1,0,-.6>,<11.2,0,-5.8>}
#local PW = array[4]{<5.2,0,-2.6>,<10.8,0,-.8>,<13.2,0,-3.2>,<8.6,0,-7.9>}
#while (I < 4)
  object { Screw(3.6) texture { Brass translate I*7 } rotate y*(30+I*77) translate PS[I] }
  object { Cup_Washer() texture { Brass translate I*5 } translate PW[I] }
  #local I = I+1; #end
