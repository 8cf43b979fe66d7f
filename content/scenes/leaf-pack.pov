// Seven spring leaves on the floor, longest to shortest; bolt and clips beside. Left = 0: the second in two pieces.
// Left = 1: reset and black from the oil, the second new and blue at its edges.
#declare Base = .17;
#include "stage.inc"
#include "ironwork.inc"
#ifndef (Left) #declare Left = 0; #end
Look(<-6,112,-74>, <0,0,-2>, 48)
Door_Light(<-130,110,60>, <0,0,0>, 2.6)
Floor()
#declare T_Spring = texture { function { F_Step(F_Mix(x*.3,y,z*.5),.4+.2*Left,.6+.25*Left) } texture_map { [0 Black_Paint(.4-.35*Left,.25)] [1 Steel_Dull] } }
#declare T_Blued = texture { pigment { function { F_Step(abs(z),1.1,2.3)*.8 + F_Mix(x*.2,1,z)*.3 } color_map { [.1 S(86,88,92)] [.6 S(66,78,104)] [1 S(52,58,112)] } } finish { diffuse .5 specular .5 roughness .03 } }
#declare Rise = 1+.28*Left;
#macro Flat(L) difference { object { Leaf(L, (2+L*.022)*Rise, 4.6, .8) } cylinder { <0,-9,0>, <0,99,0>, .5 } texture { T_Spring translate <L,0,L*3> } } #end
#macro Eye(X) difference { cylinder { <X,.6,-2.3>, <X,.6,2.3>, 2 } cylinder { <X,.6,-3>, <X,.6,3>, 1.2 } texture { T_Spring } } #end
#local I = 0; #local L = array[7] { 104, 96, 82, 68, 54, 41, 28 };
#while (I < 7)
  union {
    #if (I = 1 & Left) difference { object { Leaf(L[1], (2+L[1]*.022)*Rise, 4.6, .8) } cylinder { <0,-9,0>, <0,99,0>, .5 } texture { T_Blued } }
    #else #if (I = 1)
      intersection { object { Flat(L[1]) } plane { x, -12 rotate <0,14,6> } }
      intersection { object { Flat(L[1]) } plane { -x, 12 rotate <0,14,6> } translate x*2.6 rotate y*-5 translate z*-.6 }
    #else object { Flat(L[I]) } #end #end
    #if (I = 0) object { Eye(-53) } object { Eye(53) } #end
    rotate y*(mod(I*7,5)-2)*.5 translate <0,.4,31-I*9>
  }
  #local I = I+1;
#end
object { Bolt(1,11) texture { Steel_Dull } rotate y*24 translate <25,0,-30> } object { Nut(1) texture { Steel_Dull } translate <33,0,-27> }
#macro Clip() difference { Rounded(<-3.2,0,-1.6>, <3.2,6,1.6>, .3) box { <-2.7,.6,-3>, <2.7,9,3> } cylinder { <-9,5,0>, <9,5,0>, .4 } texture { #if (Left) T_Spring #else Rust #end } } #end
object { Clip() rotate y*30 translate <-38,0,-26> } object { Clip() rotate <0,70,0> rotate x*0 translate <-27,0,-29> }
