// The end of the ash sill: sound outside, brown cubes inside, a screwdriver in it to the handle.
#declare Base = .1;
#include "stage.inc"
Look(<-13,11,-15>, <-1,2.6,0>, 42)
Evening_Light(<-30,14,-26>)
Bench_Top(-40,60)
// The sill lies along x; its rotten end faces -x.
difference {
  Rounded(<-4,0,-2.75>, <70,6.5,2.75>, .25)
  #local R = seed(8); #local I = 0;
  #while (I < 46)
    box { <-1.2,-.55,-.5>, <1.2+rand(R)*2.6,.55,.5> rotate <rand(R)*30,rand(R)*24-12,rand(R)*24-12> translate <-4.6+rand(R)*1.6,1.1+rand(R)*4.1,-1.5+rand(R)*3.6> }
    #local I = I+1;
  #end
  texture { Ash_Old }
}
// Cubes of brown rot, in the hole and fallen out.
#declare Rot = texture { pigment { function { F_Mix(x*2,y*2,z*2) } color_map { [.2 S(58,34,20)] [.6 S(104,64,36)] [.85 S(134,88,52)] } } normal { wood .8 turbulence .1 scale .18 } finish { diffuse .8 } }
#local R = seed(5); #local I = 0;
#while (I < 230)
  #local B = .18+rand(R)*.36;
  object { Rounded(-<B*1.5,B,B>, <B*1.5,B,B>, .06) rotate <rand(R)*40-20,rand(R)*40-20,rand(R)*40-20> translate <-3.4+rand(R)*2.4,.9+rand(R)*4.6,-1.7+rand(R)*4> texture { Rot translate rand(R)*9 } }
  #local I = I+1;
#end
#local I = 0;
#while (I < 60)
  #local B = .1+rand(R)*rand(R)*.42;
  object { Rounded(-<B*1.4,B,B>, <B*1.4,B,B>, .05) rotate <0,rand(R)*180,rand(R)*12> translate <-4.6-pow(rand(R),2)*7,B,(rand(R)-.5)*9> texture { Rot translate rand(R)*9 } }
  #local I = I+1;
#end
// The screwdriver: ferrule against the rot, turned boxwood handle, a red band.
union {
  lathe { linear_spline 8, <0,-.2>, <.75,0>, <.8,1>, <1.3,2.2>, <1.45,5>, <1.25,7.6>, <.9,8.6>, <0,8.8> texture { pigment { function { F_Mix(x*4,y*.6,z*4) } color_map { [0 S(186,124,52)] [1 S(214,158,84)] } } finish { specular .6 roughness .01 reflection .04 } } }
  cylinder { y*-1.6, y*.3, .62 texture { Brass } } cylinder { y*-5, y*-1, .3 texture { Steel_Bright } }
  rotate z*76 rotate y*24 translate <-5.1,3.5,-.3>
}
