// The whole van on concrete before a yard wall, from behind on its near side. Left = 0: as it came, brown, wet, on four flat
// tyres. Left = 1: as it stands, lettered on the near side, cream canvas, period lamps. View moves the eye: 0 behind, 1 before, 2 above.
#declare Base = .22;
#ifndef (Left) #declare Left = 0; #end
#ifndef (View) #declare View = 0; #end
#declare Lamps = 1 + Left;
#include "stage.inc"
#include "van.inc"
#if (View = 0) Look(<470,165,-480>, <10,96,0>, 40) #end
#if (View = 1) Look(<-560,150,-300>, <-60,92,0>, 34) #end
#if (View = 2) Look(<420,400,-430>, <84,170,0>, 33) #end
Overcast_Light()
plane { y, 0 texture { #if (Left) Concrete #else Concrete_After_Rain #end } }
#declare Yard_Wall = texture { pigment { brick pigment { S(96,94,92) }, pigment { function { F_Mix(x*.03,y*.05,z) } color_map { [.3 S(112,112,112)] [.7 S(146,145,142)] } } brick_size <44,21,20> mortar 1.2 } normal { granite .1 scale 3 } }
plane { -z, -330 texture { Yard_Wall } }
sky_sphere { pigment { rgb <.62,.66,.7> } }
#if (Left)
  #declare F_Clear = function { .9 - .5*F_Step(F_Mix(x*.3,y*.4,4)*.6+F_Mix(x*1.6,y*1.9,6)*.4, .6,.7)*F_Step(max(abs(x-94)/94, abs(y-46)/46), .93, .99) }
  #declare Wear = .5;
  #include "nearside.inc"
  #include "panel.inc"
  #declare T_Roof_Cream = texture { pigment { function { F_Mix(x*.05,y*.1,z*.08) } color_map { [.3 S(214,200,164)] [.7 S(228,216,182)] } } normal { granite .06 scale 1 } finish { diffuse .8 specular .2 roughness .05 } }
  union {
    object { Box_Body_With(Brown, T_Panel, T_Roof_Cream, Rear_Doors_Left(Brown)) }
    object { Ladder_Hole_Marks(texture { pigment { rgb .015 } }) translate <1,88,-74.7> }
    object { Cab(Brown) } object { Chassis() } object { Number_Board(Red_Glass) }
  }
  object { Wheels(Brown) }
#else
  union {
    object { Box_Body(Brown, Brown, T_Canvas) } object { Cab(Brown) } object { Chassis() } object { Ladder_Bracket() } object { Number_Board(Red_Glass) }
    // The near rear spring is tired: the whole leans that way.
    translate <-120,-33,0> rotate <-1.6,0,-1.5> translate <120,27.2,0>
  }
  object { Wheels_Flat(Brown) }
#end
