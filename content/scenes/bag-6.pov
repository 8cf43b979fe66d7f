// Bag 6 with its tag; two bolts and two spring washers before it.
#declare Fill = .5;
#include "workshop.inc"
#include "ironwork.inc"
#include "bags.inc"
#declare Lean = -.03;
Eye(<-7,22,-27>, <.3,2,-1.6>, 46, .6, <0,2,-4>)
Tube(<20,140,0>, 1)
Hand_Lamp(<-34,22,-20>, .55, 42)
Bench(-30, 60, 14)
Brick_Wall(62)
object { Calico_Bag(11) rotate y*38 translate <4.5,0,3.5> }
object { Tag("six.png", 12) translate <2.6,.03,-7> }
object { String_Path(array[8]{<4.5,6.8,3.5>,<5.6,6.8,1.9>,<1.2,3.2,-1.6>,<-.6,.4,-4.4>,<.2,.16,-6.6>,<2.2,.16,-7.3>,<3.5,.12,-7.1>,<3.7,.1,-7>}, .11) texture { Twine } }
object { Bolt(.85, 3.6) texture { Steel_Dull } rotate y*158 translate <-3.6,0,-2.2> }
object { Bolt(.85, 3.6) rotate x*25 texture { Steel_Dull translate 9 } rotate y*-38 translate <-7.6,0,-6.6> }
object { Spring_Washer(.95) texture { Steel_Dull } translate <-1.6,.05,-5.2> }
object { Spring_Washer(.95) texture { Steel_Dull } rotate y*130 rotate z*7 translate <-3.2,.12,-7.8> }
