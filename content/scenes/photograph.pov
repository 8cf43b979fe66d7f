// The van at the kerb in 1953, from its near side and a little before it: light panel, three dark lines, dark below and in front,
// through the cab window a panelled bulkhead with a pane; a woman in an apron before the open rear door.
#declare Base = .2;
#include "stage.inc"
#include "van.inc"
Look(<-250,130,-600>, <12,94,0>, 44)
light_source { <-600,900,-700>, rgb 1.05 area_light x*60, y*60, 3, 3 adaptive 1 }
Fill_Light(<500,300,-800>, rgb .2)
#declare I_Letter = function { pigment { image_map { png "lettering.png" interpolate 2 once } scale <188,94,1> } }
#declare Light = texture { pigment { rgb .72 } finish { specular .25 roughness .03 } }
#declare Named = texture { pigment { function { I_Letter(x,y,0).red } color_map { [.3 rgb .72] [.5 rgb .06] } } finish { specular .25 roughness .03 } }
#declare Dark = texture { pigment { rgb .06 } finish { specular .5 roughness .02 reflection .08 } }
#declare Doors_1953 = union {
  intersection { object { Rear_Doors(Light) } plane { -x, -.5 } }
  object { Leaf(1) rotate y*75 translate <-70,0,-1> texture { Light } }
}
object { Box_Body_With(Dark, Named, T_Canvas, Doors_1953) } object { Chassis() } object { Wheels(Dark) }
difference { object { Cab(Dark) } box { <-74,60,-65>, <9,170,65> texture { Dark } } box { <-68,119,-80>, <-9,163,-60> texture { Dark } } }
// the bulkhead: framed, two panels below and a pane above
union {
  difference { box { <-3,58,-66>, <-1,172,66> } box { <-9,126,-40>, <9,156,-6> } box { <-4,66,-60>, <-2.4,112,-4> } box { <-4,66,4>, <-2.4,112,60> } }
  box { <-2.4,126,-24>, <-1.6,156,-22.6> }
  texture { pigment { rgb .5 } finish { ambient .25 } }
}
plane { y, 0 pigment { function { F_Mix(x*.1,1,z*.1) } color_map { [.3 rgb .16] [.7 rgb .24] } } }
// The pavement and the shop behind.
Rounded(<-900,0,110>, <900,14,400>, 2)
union {
  box { <-900,14,250>, <900,700,300> pigment { brick rgb .3, rgb .2 brick_size <22,7,10> mortar 1 } }
  box { <-330,14,240>, <-20,330,252> pigment { rgb .07 } } box { <-310,80,238>, <-40,270,241> pigment { rgb .02 } finish { reflection .2 specular .5 } }
  box { <-345,290,225>, <-5,335,252> pigment { rgb .05 } } box { <-178,80,236>, <-172,270,242> pigment { rgb .08 } }
  box { <60,14,240>, <160,260,252> pigment { rgb .1 } } box { <75,130,238>, <145,240,241> pigment { rgb .02 } finish { reflection .15 } }
  box { <260,110,240>, <420,270,252> pigment { rgb .5 } } box { <268,118,238>, <412,262,241> pigment { rgb .03 } finish { reflection .15 } }
  #local I = 0; #while (I < 9) sphere { <-295+I*30,92,236>, 11 scale <1,.97,1> pigment { rgb .4 } } #local I = I+1; #end
}
// She stands by the doors: skirt, apron, head, one arm up to the handle.
union {
  cone { <0,18,0>, 26, <0,98,0>, 15 pigment { rgb .08 } }
  cone { <0,34,-5>, 21, <0,100,-4>, 13 pigment { rgb .75 } }
  blob { threshold .5 cylinder { <0,98,0>, <0,138,0>, 26, 1 } cylinder { <-14,134,-2>, <-26,104,-8>, 11, 1 } cylinder { <14,134,0>, <-8,118,-18>, 10, .9 } pigment { rgb .14 } }
  box { <-9,98,-17>, <9,126,-13> pigment { rgb .72 } }
  cylinder { <0,138,0>, <0,146,0>, 5 pigment { rgb .42 } }
  sphere { 0, 10.5 scale <.9,1.15,.95> translate <0,156,0> pigment { rgb .42 } } sphere { 0, 12 scale <.95,1,.95> translate <1,160,3> pigment { rgb .05 } }
  cylinder { <-6,0,0>, <-6,30,0>, 5 pigment { rgb .25 } } cylinder { <7,0,0>, <7,30,0>, 5 pigment { rgb .25 } }
  translate <228,0,-52>
}
Rounded(<-900,0,112>, <900,15,118>, 1)
