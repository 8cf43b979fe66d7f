// The whole van on wet concrete before a yard wall, from behind on its near side.
#declare Base = .2;
#include "stage.inc"
#include "van.inc"
Look(<470,165,-480>, <18,92,0>, 44)
Overcast_Light()
plane { y, 0 texture { Concrete_After_Rain } }
plane { -z, -330 texture { pigment { brick pigment { S(96,94,92) }, pigment { function { F_Mix(x*.03,y*.05,z) } color_map { [.3 S(112,112,112)] [.7 S(146,145,142)] } } brick_size <44,21,20> mortar 1.2 } normal { granite .1 scale 3 } } }
sky_sphere { pigment { rgb <.62,.66,.7> } }
union {
  object { Box_Body(Brown, Brown, T_Canvas) }
  object { Cab(Brown) }
  object { Chassis() }
  // The near rear spring is tired: the whole leans that way.
  translate <-120,-33,0> rotate <-1.6,0,-1.5> translate <120,31.5,0>
}
object { Wheels(Brown) }
