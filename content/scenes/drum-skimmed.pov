// The near front drum again: bore turned bright all over, outside black, one stamp on the flange.
#declare Fill = .6;
#include "workshop.inc"
#include "ironwork.inc"
#include "smallwares.inc"
#declare Lean = -.01;
#declare Fresh_Black = texture { pigment { S(24,24,25) } normal { bumps .05 scale .5 } finish { diffuse .6 specular .5 roughness .02 reflection { .01,.12 fresnel } conserve_energy } }
#declare Turned = texture { pigment { function { f_noise3d(1,y*30,1)*.5+F_Mix(x*.3,y*.3,z*.3)*.4 } color_map { [.2 S(168,166,162)] [.8 S(212,211,207)] } }
  normal { function { f_noise3d(1,y*40,1) } .18 } finish { diffuse .34 specular .9 roughness .02 metallic brilliance 2 reflection { .25 metallic } } }
Eye(<-8,30,-31>, <.5,2.6,-.2>, 49, .8, <-2,5.5,-7>) // as drum.pov, so that the two stand side by side
Tube(<-10,140,-10>, 1)
Hand_Lamp(<34,26,-14>, .6, 45)
Bench(-30, 60, 9)
Brick_Wall(62)
union {
  object { Drum(0, Fresh_Black, Turned) }
  cylinder { y*6.45, y*6.53, 13.2 texture { pigment { radial rotate y*-90 color_map { [0 S(40,40,40)] [1 S(46,46,46)] } } finish { specular .4 roughness .03 } } clipped_by { cylinder { -y, y*9, 11.6 inverse } } }
  // the turner's stamp, bright where the punch broke the paint
  box { <-1.3,0,-.55>, <1.3,.02,.55> texture { pigment { image_pattern { png "stamp.png" interpolate 2 once } translate <-.5,-.5,0> rotate x*90 scale <2.6,1,1.1> pigment_map { [.3 S(190,188,184)] [.7 S(40,40,40)] } } } translate <0,6.525,-12.4> rotate y*-12 }
  rotate y*14
}
object { Rag(9,7,4) texture { Calico scale .6 } scale <1,.8,1> translate <25,0,10> }
