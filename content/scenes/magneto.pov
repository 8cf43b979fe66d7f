// A magneto with its cap off, the cap beside it showing four brass-lined towers.
#declare Base = .17;
#include "stage.inc"
Look(<-10,26,-42>, <5,5,0>, 50)
Door_Light(<-60,80,-50>, <0,5,0>, 1.3)
Bench_Top(-50,60)
Brick_Wall(70)
#declare Bakelite = texture { pigment { function { F_Mix(x,y,z) } color_map { [.3 S(34,20,15)] [.7 S(56,32,22)] } } finish { specular .6 roughness .015 reflection .05 } }
#declare Cast = texture { pigment { function { F_Mix(x,y,z) } color_map { [.3 S(126,126,122)] [.7 S(164,164,160)] } } normal { granite .15 scale .5 } finish { specular .35 roughness .05 } }
#declare Magnet = texture { pigment { function { F_Mix(x*.8,y*.8,z*.8) } color_map { [.55 S(40,42,46)] [.7 S(84,58,42)] } } finish { specular .45 roughness .03 reflection .04 } }
union {
  // Base, armature tunnel along x, the horseshoe magnet standing over it.
  Rounded(<-8,0,-5>, <8,1.6,5>, .4) Rounded(<-7,1,-4.4>, <7,8.4,4.4>, 1.2)
  texture { Cast }
}
difference {
  merge { difference { cylinder { x*-4.6, x*4.6, 6.2 translate y*9 } box { <-9,0,-9>, <9,9,9> } } box { <-4.6,1.6,-6.2>, <4.6,9,-4.3> } box { <-4.6,1.6,4.3>, <4.6,9,6.2> } }
  cylinder { <-9,9,0>, <9,9,0>, 4.3 } box { <-9,0,-4.3>, <9,9,4.3> } box { <-.12,0,-9>, <.12,20,9> }
  texture { Magnet }
}
union { Rounded(<-9.6,2.4,-3.2>, <-7,8,3.2>, .5) cylinder { x*-10, x*-7, 3 translate y*5.2 } texture { Cast } }
cylinder { <-14,5.2,0>, <-10,5.2,0>, .9 texture { Steel_Bright } } union { torus { 2.1, .55 rotate z*90 } cylinder { x*-.6, x*.6, 1.9 } translate <-11.6,5.2,0> texture { Steel_Dull } }
// The open end: round flange, ring, rotor arm with its brass tongue, two clips hanging.
union { cylinder { <7,5.6,0>, <9.6,5.6,0>, 4.6 } texture { Cast } }
difference { cylinder { <9.4,5.6,0>, <10.4,5.6,0>, 4.7 } cylinder { <9.5,5.6,0>, <11,5.6,0>, 4.1 } texture { Brass } }
union { cylinder { <9.4,5.6,0>, <12,5.6,0>, 1.3 } Rounded(<10.6,4.9,-.7>, <11.8,9,.7>, .3) texture { Bakelite } }
object { Rounded(<11.5,6,-.4>, <12.2,9.5,.4>, .1) texture { Brass } }
#local I = 0; #while (I < 4) cylinder { <6.6*(1-2*mod(I,2)),1.4,-4.2+div(I,2)*8.4>, <6.6*(1-2*mod(I,2)),2.2,-4.2+div(I,2)*8.4>, .7 texture { Brass } } #local I = I+1; #end
// The cap, mouth down, four towers lined with brass.
union {
  difference { lathe { linear_spline 7, <0,0>, <4.9,0>, <4.85,3>, <4.6,3.9>, <4.1,4.5>, <3.4,4.7>, <0,4.7> } cylinder { y*-1, y*2, 4.3 } texture { Bakelite } }
  torus { 4.85, .28 translate y*.3 texture { Brass } }
  #local I = 0;
  #while (I < 4)
    union {
      difference { cone { y*3.4, 1.35, y*7.2, 1.05 } cylinder { y*5, y*8, .72 } texture { Bakelite } }
      difference { cylinder { y*5, y*7.45, .78 } cylinder { y*4.5, y*8, .5 } texture { Brass } }
      translate x*2.9 rotate y*(I*90+25)
    }
    #local I = I+1;
  #end
  translate <17,0,-5>
}
