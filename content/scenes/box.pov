// The box of things found in the van, from above.
#declare Fill = .5;
#include "workshop.inc"
#include "ironwork.inc"
#declare Lean = .04;
Eye(<1,46,-17>, <.3,0,-.8>, 55, .3, <0,1,0>)
Tube(<10,140,20>, 1.05)
Hand_Lamp(<-36,30,18>, .6, 45)
Bench(-40, 60, 17)
union { // the tray
  box { <-19,0,-12>, <19,.7,12> texture { Ash_Old scale 1.3 } }
  #local I = -1; #while (I < 2)
    object { Soft_Box(<-20,0,I*12.4-.5>, <20,5,I*12.4+.5>, .15) texture { Ash_Old translate I*30 } }
    object { Soft_Box(<-12.9,0,I*19.5-.55>, <12.9,5,I*19.5+.55>, .15) texture { Ash_Old translate I*13 } rotate y*90 }
    #local K = -1; #while (K < 2) cylinder { <I*19.5,1.4,K*12.9>, <I*19.5,1.4,K*12.95>, .2 texture { Rust } } cylinder { <I*19.5,3.6,K*12.9>, <I*19.5,3.6,K*12.95>, .2 texture { Rust } } #local K = K+2; #end
    #local I = I+2; #end
  rotate y*-4
}
#local R = seed(31);
// dust and crumbs
#local I = 0; #while (I < 260) sphere { 0, .04+pow(rand(R),3)*.16 scale <1,.5,1> translate <rand(R)*37-18.5,.73,rand(R)*23-11.5> pigment { S(90+rand(R)*60,74+rand(R)*40,54) } } #local I = I+1; #end
union { // door key
  torus { 1.25, .32 scale <1.15,1,1> translate x*-1.3 } cylinder { <0,0,0>, <6.2,0,0>, .3 } torus { .32,.12 rotate z*90 translate x*.4 } torus { .32,.12 rotate z*90 translate x*.9 }
  difference { box { <4.5,-.14,0>, <6,.14,1.5> } box { <4.95,-1,.9>, <5.2,1,2> } box { <5.4,-1,.5>, <5.6,1,2> } box { <4,-1,1.2>,<4.7,1,2> } }
  texture { Brass } scale 1.15 rotate y*28 translate <-13,1.1,6.4> }
#declare Cap = union { difference { cylinder { 0, y*1, .48 } #local I = 0; #while (I < 20) cylinder { <.5,-1,0>, <.5,.75,0>, .05 rotate y*I*18 } #local I = I+1; #end cylinder { y*-.1, y*.8, .3 } } cone { y*1, .46, y*1.15, .3 } }
object { Cap texture { Brass translate 3 } translate <-4.2,.72,8.2> } object { Cap rotate z*90 rotate y*40 texture { Brass } translate <-2.2,1.2,6.6> }
union { // back of a round mirror
  lathe { cubic_spline 8, <0,1.1>, <0,1.1>, <1,1.05>, <1.6,.7>, <4,.62>, <5.1,.4>, <5.4,0>, <5.4,-.3> } cylinder { y*.6, y*1.9, .55 } torus { 5.35, .18 }
  texture { Black_Paint(.75,.15) } rotate <3,0,4> translate <12.4,1.3,5.2> }
#macro Ticket(Torn) // a bread ticket of buff card, punched at one end
  difference {
    box { <-3.2,0,-2.2>, <3.2,.07,2.2> }
    cylinder { <-2.7,-1,0>, <-2.7,1,0>, .17 }
    #if (Torn) prism { -1, 1, 6, <3.4,-1.1>, <2.7,-.7>, <2.5,.1>, <1.7,.8>, <1.9,2.4>, <3.5,2.4> } #end
    texture { pigment { image_pattern { png "ticket.png" interpolate 2 once } translate <-.5,-.5,0> rotate x*90 scale <6.4,1,4.4>
      pigment_map { [.3 S(46,46,38)] [.7 function { F_Mix(x*.5,y+5,z*.5)*.7+F_Mix(x*3,1,z*3)*.3 } color_map { [.3 S(176,150,104)] [.7 S(206,182,138)] }] } }
      finish { diffuse .8 specular .05 } }
  }
#end
object { Ticket(0) rotate <0,-12,0> translate <-3.9,.75,1.7> }
object { Ticket(0) rotate <2,21,2> translate <.6,.9,4.3> }
object { Ticket(1) rotate <1,-38,0> translate <4.6,.78,-.6> }
sphere_sweep { cubic_spline 26, // sash cord, loosely coiled
  #local I = 0; #while (I < 26) <cos(I*.72)*(3.1+.5*sin(I*1.7))*(1+(I>22)*.35), .35+I*.045+rand(R)*.25, sin(I*.72)*(2.7+.4*cos(I*1.3))>, .3 #local I = I+1; #end
  tolerance .05 texture { Sash_Cord } translate <-12.5,.7,-5.4> }
difference { // cracked knob of bakelite
  union { sphere { 0, 1.9 scale <1,.8,1> } cylinder { y*-2.2, 0, .95 } torus { 1, .16 translate y*-1.5 } }
  prism { -3, 3, 6, <0,-.02>, <.7,.05>, <1.3,-.06>, <2.2,.12>, <1.3,.04>, <0,-.02> rotate y*200 }
  cylinder { y*-3, y*-1, .3 }
  pigment { function { F_Mix(x*1.3,y*1.3,z*1.3) } color_map { [.3 S(30,14,8)] [.7 S(66,28,14)] } } finish { diffuse .6 specular .7 roughness .01 reflection { .02,.3 fresnel } conserve_energy } interior { ior 1.5 }
  rotate <70,0,40> translate <2.6,2.3,-7.6> }
#declare I_Half = function { pigment { image_map { png "half.png" interpolate 2 } translate <-.5,-.5,0> rotate x*90 scale 3.2 } }
union { // half-pound weight
  difference { union { cylinder { 0, y*2.3, 2.7 } torus { 2.55, .15 translate y*2.25 } cylinder { y*2.3, y*2.38, 2.5 } } 
    cylinder { y*2.2, y*3, 2.1 } texture { Black_Paint(.6,.2) } }
  cylinder { 0, y*2.24, 2.1 texture { pigment { function { select(max(abs(x),abs(z))-1.55, I_Half(x,y,z).gray, 1) } pigment_map { [.3 S(150,146,138)] [.7 S(40,36,33)] } } finish { specular .4 roughness .04 } } }
  rotate y*-20 translate <12.2,.7,-6.3> }
