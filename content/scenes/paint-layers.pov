// The hanging edge of the near rear door, feathered: every coat like the contours of a map.
#declare Fill = .35;
#include "workshop.inc"
#declare F_Clear = function { 0 }
#include "panel.inc"
#declare Lean = .05;
Eye(<1.1,9.5,-5.2>, <.5,0,.2>, 46, .22, <.4,0,.1>)
Tube(<20,120,30>, .5)
Hand_Lamp(<-16,5.5,5>, 1.1, 20)
// 1 at the middle of the place, falling outward; every coat takes its band.
#declare F_Hill = function { 1 - sqrt(pow(x/4.3,2)+pow((z+.4)/2.9,2)) + (F_Mix(x*.55,3,z*.7)-.5)*.5 + (f_noise3d(x*2.2,1,z*2.2)-.5)*.1 + (f_noise3d(x*7,1,z*7)-.5)*.02 }
#declare Bare_Ash = texture { Timber_Pigment(S(196,170,126), S(164,134,92), .35, .7) normal { function { f_noise3d(x*.8,y*30,z*30) } .3 } finish { diffuse .8 } scale .35 }
#declare Step_Shine = finish { diffuse .8 specular .25 roughness .03 }
#declare Edge_Coats = texture {
  function { min(.99, max(0, F_Hill(x,y,z))) }
  texture_map {
    [.06 Brown rotate y*0 scale .45]
    [.09 pigment { S(62,40,28) } finish { Step_Shine }]
    [.17 pigment { S(70,46,33) } finish { Step_Shine }]
    [.19 pigment { S(168,146,136) } finish { Step_Shine }]
    [.33 pigment { S(160,138,128) } finish { Step_Shine }]
    [.345 pigment { P_Amber scale .4 } finish { Step_Shine }]
    [.40 pigment { P_Amber scale .4 } finish { Step_Shine }]
    [.415 pigment { P_Cream } finish { Step_Shine }]
    [.60 pigment { P_Cream } finish { Step_Shine }]
    [.615 Primer scale .4]
    [.74 Primer scale .4]
    [.76 Bare_Ash]
  }
}
// ground wet: the sill of the door laid flat, its edge turned from us
union {
  height_field { function 300,300 { 1-.75*F_Step(F_Hill((x-.5)*24,0,(.5-y)*24),0,.8)-.04*f_noise3d(x*60,y*60,3) } smooth translate <-.5,-1,-.5> scale <24,.14,24> texture { Edge_Coats } }
  clipped_by { box { <-13,-1,-3.2>, <13,1,4.6> } }
}
box { <-13,-4,-3.2>, <13,-.16,4.6>texture { Brown scale .5 translate 4 } }
#local R = seed(17); #local I = 0;
#while (I < 40) sphere { 0, .05+pow(rand(R),3)*.28 scale <1,.35,1> translate <rand(R)*14-7,-.03,rand(R)*7.4-3> pigment { rgbt <.62,.5,.4,.75> } finish { diffuse .35 specular 1 roughness .003 reflection { .02,.4 fresnel } conserve_energy } interior { ior 1.33 } } #local I = I+1; #end
plane { y, -60 texture { Concrete } }
