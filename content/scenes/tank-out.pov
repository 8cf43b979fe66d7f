// The fuel tank out on two battens, daylight from an open door.
#declare Base = .16;
#include "stage.inc"
#include "tank.inc"
Look(<34,62,-120>, <2,13,0>, 40)
Door_Light(<-190,130,-90>, <0,10,0>, 1.5)
Floor() Brick_Wall(120)
object { Tank(T_Bitumen) translate y*5 }
union { object { Strap(-20) } object { Strap(18) } cylinder { <-20,3,-19.5>, <-20,10,-19.5>, .7 } cylinder { <18,3,-19.5>, <18,10,-19.5>, .7 } translate y*5 texture { Rust } }
object { Rounded(<-34,0,-3.5>, <34,5,3.5>, .4) rotate y*90 translate x*-22.5 texture { Ash_Old rotate y*90 } }
object { Rounded(<-34,0,-3.5>, <34,5,3.5>, .4) rotate y*90 translate x*20.5 texture { Ash_Old rotate y*90 } }
