// Two headlamps facing us: the left reflector with a brown tide-mark, the right one rusted through, its glass cracked.
#declare Fill = .45;
#include "workshop.inc"
#include "lamp.inc"
#declare Lean = .01;
#declare Silvered = texture { pigment { S(206,208,208) } finish { diffuse .42 specular .7 roughness .02 metallic reflection { .4 metallic } } }
#declare F_Tide = function { y + 2.2 + (f_noise3d(x*.5,1,z)-.5)*1.6 }
#declare Stained = texture { function { F_Step(1-abs(F_Tide(x,y,z))*1.1+(F_Mix(x*.8,y*.8,z*.8)-.5)*.8, .2, .8)*.9 + F_Step(-F_Tide(x,y,z),-.2,1.5)*.35 }
  texture_map { [.1 Silvered] [.5 pigment { S(150,118,76) } finish { diffuse .6 specular .3 roughness .05 reflection .08 }] [1 pigment { S(96,60,34) } finish { diffuse .75 specular .05 }] } }
#declare F_Hole = function { F_Mix(x*.33,y*.33+4,z*.33)*.75+F_Mix(x*1.3,y*1.3,z*1.3)*.25 - F_Step(y,-2,5)*.14 }
#declare Rotten = texture { function { F_Hole(x,y,z) } texture_map { [.52 Rust] [.54 pigment { S(40,22,14) } finish { diffuse .5 }] [.56 pigment { rgb .004 } finish { diffuse .1 }] } }
#declare Black_Old = texture { Black_Paint(.55,.25) }
Eye(<-4,19,-52>, <0,8.6,0>, 48, .5, <0,9,-4>)
Tube(<-20,140,-30>, .8)
Hand_Lamp(<44,26,-34>, .85, 55)
Bench(-36, 60, 21)
Brick_Wall(64)
object { Headlamp(Black_Old, 11, Stained, 0, 0) rotate <-9,9,0> translate <-12,9.9,2> }
object { Headlamp(Black_Old, 11, Rotten, 0, 1) rotate <-12,-13,7> translate <11.5,9.9,0> }
// flakes of rust fallen out of the right one
#local R = seed(2); #local I = 0;
#while (I < 40) sphere { 0, .12+rand(R)*.35 scale <1,.2,.8> rotate y*rand(R)*360 translate <4+rand(R)*16,.05,-3-rand(R)*7> texture { Rust } } #local I = I+1; #end
// what the chrome and the glass see behind us: the dark shop, its floor, a lit doorway
box { <-400,-90,-420>, <400,200,-400> pigment { rgb .03 } }
box { <-400,-91,-420>, <400,-90,-40> pigment { rgb .06 } }
box { <60,-90,-399>, <140,120,-398> pigment { rgb 1 } finish { emission .7 } no_radiosity no_shadow }
