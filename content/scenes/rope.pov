// A loop of sash cord between the door's edge and the ash pillar, for a door check.
#declare Fill = .5;
#include "workshop.inc"
#declare Lean = -.03;
Eye(<5,104,-40>, <1.5,98.6,0>, 44, .6, <0,99,-3>)
Tube(<30,230,-60>, 1.4)
Hand_Lamp(<-36,112,-34>, .5, 45)
// pillar left, with a screw-eye; door right, open towards us, its edge shown
object { Soft_Box(<20,-3,-2.6>, <180,3.4,2.6>, .35) texture { Ash_Old translate <5,3,2> } rotate z*90 translate <-10.5,0,2> }
box { <-60,0,4.6>, <-12,190,5> texture { Primer } }
union { object { Soft_Box(<0,0,-2>, <60,180,2>, .5) texture { Brown } } translate x*0 rotate y*38 translate <9,20,1> }
union { torus { .9, .22 rotate x*90 } cylinder { <0,-.8,0>, <0,-.8,2>, .2 } texture { Steel_Dull } rotate y*-20 translate <-9.6,99.2,-2> }
union { cylinder { <0,0,0>, <0,0,-2>, .25 } torus { .9,.22 rotate x*90 translate z*-2.4 } texture { Brass } rotate y*-40 translate <10.2,98.6,-2.2> }
#macro Cord(P) sphere_sweep { cubic_spline dimension_size(P,1), #local I = 0; #while (I < dimension_size(P,1)) P[I], .36 #local I = I+1; #end tolerance .05
  texture { pigment { function { .5+.5*sin((x*1.4+y*2.4+z*1.3)*5.2) } color_map { [.1 S(150,140,116)] [.5 S(206,198,176)] [1 S(216,208,188)] } } normal { function { sin((x*1.4+y*2.4+z*1.3)*5.2) } .5 } finish { diffuse .8 } } } #end
Cord(array[9]{<-11,100.6,-1>,<-9.7,99.4,-1.5>,<-9,98,-2.9>,<-6,96.2,-4.2>,<0,95.3,-5>,<6,96,-4.9>,<10,97.4,-4.6>,<10.8,98.4,-3.7>,<11,100,-2.6>})
Cord(array[10]{<-9.6,98,-3.6>,<-9.7,98.9,-2.9>,<-9.4,100,-2.2>,<-7.6,99.4,-3.2>,<-3,97.9,-4.4>,<2,97.2,-5.2>,<7,97.8,-5.2>,<10.6,99,-5.1>,<11.6,98.2,-4.2>,<11,97,-3.8>})
// the knot near the pillar: round turns and a tail
Cord(array[8]{<-6.9,95.6,-3.4>,<-6.6,97.4,-4.9>,<-6.1,98.7,-4.2>,<-6.4,97.2,-2.8>,<-5.7,95.6,-3.9>,<-5.3,97.6,-5.3>,<-4.9,98.3,-4.2>,<-5,97,-3.2>})
Cord(array[7]{<-5,97,-3.2>,<-5.4,96.4,-4.6>,<-5.2,94.6,-5.2>,<-4.6,92.6,-5.1>,<-4.9,90.6,-5.4>,<-4.2,89,-5.2>,<-4,88,-5>})
#local R = seed(3); #local I = 0; #while (I < 24) cylinder { <-4.25,89.2,-5.2>, <-4.25+rand(R)*1.3-.65,87.3-rand(R)*.6,-5.2+rand(R)-.5>, .05 texture { Sash_Cord } } #local I = I+1; #end
plane { -z, -140 texture { Whitewashed_Brick translate z*139.9 } }
plane { y, 0 texture { Concrete } }
