// A scalpel by a lifted curl of brown; under it the leg of a green R with its gilt edge.
#declare Fill = .3;
#include "workshop.inc"
#declare F_Edge = function { (x - 172.6) + .42*(y-62.5) - (F_Mix(x*.5,y*.5,3)-.5)*2.2 - (f_noise3d(x*2.6,y*2.6,1)-.5)*.7 }
#declare F_Clear = function { F_Step(F_Edge(x,y,z)*1.1 + .5, 0, 1) }
#declare Wear = .5;
#include "panel.inc"
#include "smallwares.inc"
#declare Lean = -.05;
Eye(<168.5,8.6,51.5>, <172.9,0,62.9>, 50, .32, <173.4,0,62.8>)
Tube(<160,120,40>, .38)
Hand_Lamp(<154,4.2,70>, 1.15, 24)
// a strip of paint L long and W wide, rolled up through Turns; grows from the origin along x, rises in y
#macro Curl(L, W, Radius, Turns, Seed)
  #local N = 90; #local M = 16;
  mesh2 {
    vertex_vectors { (N+1)*(M+1),
      #local I = 0; #while (I <= N) #local J = 0; #while (J <= M)
        #local T = I/N; #local V = J/M;
        #local A = T*Turns*2*pi; #local R = Radius*(1-.42*T);
        #local Fray = (f_noise3d(T*9,V*2.2,Seed)-.5)*.5 + (f_noise3d(T*30,V*5,Seed+3)-.5)*.14;
        #local Wd = W*(.55+.45*sin(pi*min(1,T*1.2+.25)))*(1+Fray*(abs(V-.5)*2));
        <L*T*.25 + sin(A)*R + (f_noise3d(T*6,V*3,Seed)-.5)*.05, R*(1-cos(A)) + T*.04, (V-.5)*Wd + T*.35>,
      #local J = J+1; #end #local I = I+1; #end }
    face_indices { N*M*2,
      #local I = 0; #while (I < N) #local J = 0; #while (J < M)
        #local P = I*(M+1)+J;
        <P,P+1,P+M+1>, <P+1,P+M+2,P+M+1>,
      #local J = J+1; #end #local I = I+1; #end }
    texture { pigment { function { F_Mix(x*2,y*2,z*2) } color_map { [.2 S(66,43,29)] [.8 S(86,58,41)] } } normal { bumps .15 scale .1 } finish { diffuse .8 specular .35 roughness .03 } }
    interior_texture { pigment { function { F_Mix(x*3,y*3,z*3) } color_map { [.3 S(168,146,136)] [.6 S(178,150,124)] [.75 S(176,130,72)] } } finish { diffuse .8 } }
  }
#end
object { Curl(2.1, 2.2, .46, 1.25, 3) rotate y*-158 translate <171.9,.0,62.6> }
object { Curl(.9, .7, .18, 1.4, 8) rotate y*-40 translate <174.6,.06,60.6> }
object { Curl(.7, .5, .14, 1.2, 5) rotate y*70 translate <176.2,.04,64.2> }
#local R = seed(9); #local I = 0;
#while (I < 70)
  prism { 0, .025, 5, <0,0>, <.3+rand(R)*.3,.05>, <.4,.3+rand(R)*.2>, <.1,.35>, <0,0> scale .1+pow(rand(R),2)*.75
    rotate <rand(R)*14,rand(R)*360,rand(R)*14> translate <171+rand(R)*6.5, .02, 59.6+rand(R)*5>
    pigment { #if (rand(R)<.65) S(72,47,33) #else S(172,150,138) #end } finish { diffuse .8 } }
  #local I = I+1;
#end
// the scalpel: flat handle with ribs, blade pinned on
union {
  difference {
    object { Soft_Box(<0,0,-.42>, <12,.26,.42>, .11) }
    #local I = 0; #while (I < 12) cylinder { <1.2+I*.24,.3,-1>, <1.2+I*.24,.3,1>, .07 } #local I = I+1; #end
    texture { Steel_Bright }
  }
  prism { -.02, .025, 9, <-.6,-.3>, <-2.6,-.32>, <-3.9,-.06>, <-4.25,.22>, <-4.0,.3>, <-2,.36>, <-.4,.3>, <.4,.2>, <-.6,-.3> translate y*.13
    texture { pigment { S(205,206,208) } normal { function { f_noise3d(x*3,y,z*40) } .08 } finish { diffuse .3 specular .9 roughness .015 metallic reflection { .35 metallic } } } }
  prism { -.021, .026, 6, <-2.6,-.32>, <-3.9,-.06>, <-4.25,.22>, <-3.72,-.02>, <-2.5,-.24>, <-2.6,-.32> translate y*.13
    texture { pigment { S(236,238,240) } finish { diffuse .4 specular .9 roughness .01 reflection .4 } } }
  rotate x*-3 rotate y*-34 translate <176.6,.05,63.2>
}
box { <0,0,0>, <188,92,.2> texture { T_Panel } rotate x*90 }
plane { y, -78 texture { Concrete } }
