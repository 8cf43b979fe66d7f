// Thursday's post: an opened envelope, a folded letter, the corner of an old photograph, reading glasses.
#declare Fill = .55;
#include "workshop.inc"
#declare Lean = -.02;
Eye(<-5,33,-27>, <.6,0,-1.4>, 46, .55, <0,0,-3>)
Tube(<20,140,10>, 1.05)
Hand_Lamp(<-34,28,6>, .6, 45)
Bench(-40, 70, 41)
Brick_Wall(72)
#declare P_Paper = pigment { function { F_Mix(x*.4,1,z*.4) } color_map { [.2 S(222,216,200)] [.8 S(236,231,218)] } }
// a sheet bent by H(x) over its width; Tex lies on it in the xz plane, its corner at the origin
#macro Sheet_Of(W, D, F_H, Tex)
  mesh2 { #local N = 40; #local M = 16;
    vertex_vectors { (N+1)*(M+1), #local I = 0; #while (I <= N) #local J = 0; #while (J <= M) <W*J/M, F_H(W*J/M,D*I/N), D*I/N>, #local J = J+1; #end #local I = I+1; #end }
    face_indices { N*M*2, #local I = 0; #while (I < N) #local J = 0; #while (J < M) #local P = I*(M+1)+J; <P,P+1,P+M+1>, <P+1,P+M+2,P+M+1>, #local J = J+1; #end #local I = I+1; #end }
    texture { Tex } }
#end
#declare F_Folded = function(u,v) { .15 + 2.3*(1-abs(v-7.1)/7.1)*0 + abs(v-7.1)*.26*F_Step(abs(v-7.1),0,1.2) + .05*f_noise3d(u*.3,v*.3,1) + .004*(u-7)*(u-7) }
#declare F_Flat = function(u,v) { .06 + .25*f_noise3d(u*.13,v*.13,4) }
#declare Written = texture { pigment { image_pattern { png "hand.png" interpolate 2 once } rotate x*90 scale <14.8,1,20> translate z*-5.4 pigment_map { [.3 S(34,40,70)] [.85 P_Paper] } } finish { diffuse .82 } }
object { Sheet_Of(14.8, 14.2, F_Folded, Written) rotate y*-13 translate <-1.5,.55,-8.6> }
#declare Envelope = texture { pigment { function { F_Mix(x*.6,1,z*.6) } color_map { [.2 S(198,186,160)] [.8 S(212,202,178)] } } normal { bumps .1 scale 2 } finish { diffuse .8 } }
union {
  Sheet_Of(16.4, 11.2, F_Flat, Envelope)
  // torn flap standing open
  mesh2 { vertex_vectors { 7, <0,.3,11.2>, <16.4,.3,11.2>, <12.6,1.7,14.8>, <9,2.2,16.6>, <7.4,2.2,16.7>, <4,1.7,14.8>, <8.2,.5,12> } face_indices { 6, <0,6,5>, <6,4,5>, <6,3,4>, <6,2,3>, <6,1,2>, <0,1,6> } texture { Envelope } }
  box { <13.3,.36,7.7>, <15.5,.4,10.3> pigment { S(120,48,58) } } torus { 1.5, .05 scale <1,.2,1> translate <12.9,.4,8.9> pigment { rgb .1 } } torus { 1.15, .03 scale <1,.2,1> translate <12.9,.4,8.9> pigment { rgb .12 } }
  #local I = 0; #while (I < 4) sphere_sweep { cubic_spline 12, #local K = 0; #while (K < 12) <3.2+K*.62*(1-I*.08), .34, 5.4-I*1.2+sin(K*2.6+I)*.22> , .045 #local K = K+1; #end pigment { S(30,36,64) } } #local I = I+1; #end
  rotate y*9 translate <-18.5,0,-3.4>
}
// the photograph under the letter's edge: white border, deckled, mostly grey
#declare Snap = texture { pigment { function { max(F_Step(abs(x-4.6),3.9,3.95),F_Step(abs(z-3.2),2.5,2.55)) } pigment_map {
  [.4 function { F_Mix(x*.3,1,z*.3)*.45 + F_Step(z,3.0,3.3)*.14 - .45*F_Step(1-max(abs(x-4.9)/2.2,abs(z-2.7)/.9),0,.04)*.0 + .4*F_Step(1-max(abs(x-4.4)/2.1,abs(z-2.9)/1.05),0,.06) } color_map { [.15 rgb .03] [.5 rgb .2] [.9 rgb .62] }]
  [.6 S(224,220,208)] } } finish { diffuse .75 specular .45 roughness .02 reflection { .01,.1 fresnel } conserve_energy } }
difference {
  box { <0,.03,0>, <9.2,.07,6.4> }
  #local I = 0; #while (I < 31) cylinder { <I*.307,-1,0>, <I*.307,1,0>, .1 } cylinder { <I*.307,-1,6.4>, <I*.307,1,6.4>, .1 } #local I = I+1; #end
  #local I = 0; #while (I < 22) cylinder { <0,-1,I*.305>, <0,1,I*.305>, .1 } cylinder { <9.2,-1,I*.305>, <9.2,1,I*.305>, .1 } #local I = I+1; #end
  texture { Snap } interior { ior 1.5 } rotate y*-24 translate <8.2,.05,-11.2> }
// reading glasses
#declare Tortoise = texture { pigment { function { F_Mix(x*2,y*2,z*2) } color_map { [.35 S(34,20,12)] [.6 S(112,66,28)] [.75 S(40,24,14)] } } finish { diffuse .6 specular .8 roughness .01 reflection .04 } }
union {
  #local K = -1; #while (K < 2)
    torus { 2.3, .2 rotate x*90 scale <1.08,.92,1> translate <K*3.1,2.3,0> texture { Tortoise } }
    disc { <K*3.1,2.3,0>, z, 2.25 scale <1,.94,1> pigment { rgbt <.95,.97,.97,.93> } finish { diffuse .02 specular .9 roughness .005 reflection { .04,.4 fresnel } conserve_energy } interior { ior 1.5 } no_shadow }
    sphere_sweep { cubic_spline 6, <K*5.5,3,-1>, .17 <K*5.5,3,0>, .17 <K*5.55,2.6,5>, .15 <K*5.4,1.6,10>, .15 <K*5.1,.25,12.6>, .2 <K*5,-.8,13.2>, .2 texture { Tortoise } }
    #local K = K+2; #end
  sphere_sweep { cubic_spline 5, <-1.6,2,0>, .18 <-.95,2.75,0>, .18 <0,3.05,0>, .18 <.95,2.75,0>, .18 <1.6,2,0>, .18 texture { Tortoise } }
  rotate x*2 rotate y*152 translate <13.5,.1,4.5> }
