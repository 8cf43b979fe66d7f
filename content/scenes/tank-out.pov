// The fuel tank out on two battens, light from an open door. Left = 1: patched, red oxide and black over it, the straps done.
#declare Base = .16;
#include "stage.inc"
#include "tank.inc"
#ifndef (Left) #declare Left = 0; #end
Look(<34,62,-120>, <2,13,0>, 40)
Door_Light(<-190,130,-90>, <0,10,0>, 1.5)
Floor() Brick_Wall(120)
#declare T_New_Black = texture { pigment { function { F_Mix(x*.3,y*.3,z*.3) } color_map { [.3 S(24,24,25)] [.7 S(32,31,31)] } } normal { bumps .04 scale 2 } finish { diffuse .7 specular .45 roughness .02 reflection .03 } }
#declare T_Coat = texture { #if (Left) T_New_Black #else T_Bitumen #end }
object { Tank(T_Coat) translate y*5 }
#if (Left)
  // the cap on the neck
  cylinder { <41.4,34.4,6>, <43.6,37,6>, 4.2 texture { Steel_Bright } } #end
union { object { Strap(-20) } object { Strap(18) } cylinder { <-20,3,-19.5>, <-20,10,-19.5>, .7 } cylinder { <18,3,-19.5>, <18,10,-19.5>, .7 } translate y*5 texture { #if (Left) T_New_Black #else Rust #end } }
object { Rounded(<-34,0,-3.5>, <34,5,3.5>, .4) rotate y*90 translate x*-22.5 texture { Ash_Old rotate y*90 } }
object { Rounded(<-34,0,-3.5>, <34,5,3.5>, .4) rotate y*90 translate x*20.5 texture { Ash_Old rotate y*90 } }
