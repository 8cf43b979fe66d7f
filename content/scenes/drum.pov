// The near front drum, open side up, three deep rings, rust at the lip.
#declare Fill = .5;
#include "workshop.inc"
#include "ironwork.inc"
#include "smallwares.inc"
#declare Lean = -.01;
#declare Lip_Rust = texture { function { F_Step(y + (F_Mix(x*.9,y*.9,z*.9)-.5)*2.2, 5.5, 6.1) } texture_map { [0 Black_Paint(.45,.25)] [1 Rust] } }
#declare Clean_Swept = texture { pigment { function { f_noise3d(x*.1,y*22,z*.1)*.6+F_Mix(x*.6,y*.6,z*.6)*.4 } color_map { [.25 S(112,108,102)] [.7 S(190,186,178)] } }
  normal { function { f_noise3d(x*.05,y*26,z*.05) } .55 } finish { diffuse .4 specular .9 roughness .03 metallic reflection { .2 metallic } } }
#declare In_The_Ring = texture { pigment { S(46,36,30) } normal { granite .2 scale .2 } finish { diffuse .5 specular .3 roughness .05 } }
#declare F_Radius = function { sqrt(x*x+z*z) }
#declare Swept = texture { function { F_Step(y + (F_Mix(x*.6,y*2,z*.6)-.5)*1.4, 5.2, 5.7) }
  texture_map { [0 function { F_Step(F_Radius(x,y,z), 11.47, 11.6) } texture_map { [0 Clean_Swept] [1 In_The_Ring] }] [1 Rust] } }
Eye(<-8,30,-31>, <.5,2.6,-.2>, 49, .8, <-2,5.5,-7>)
Tube(<0,140,0>, .95)
Hand_Lamp(<34,26,-14>, .8, 45)
Bench(-30, 60, 9)
Brick_Wall(62)
object { Drum(1, Lip_Rust, Swept) rotate y*14 }
object { Rag(8,6,11) texture { Rag_Cloth } scale <1,.7,1> translate <-24,0,12> }
object { Soft_Box(<-9,0,-.15>,<9,1.2,.15>,.1) rotate x*90 texture { Steel_Dull } rotate y*-62 translate <21,.2,-9> }
