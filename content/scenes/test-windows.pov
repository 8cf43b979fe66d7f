// Four trial squares of 50 mm on the brown nearside panel, taped and lettered A to D.
#declare Fill = .5;
#include "workshop.inc"
#declare Row = 18.6; // height of their middle: under the third line, B on the foot of its last E
#declare CA = 135.2; #declare CB = 145.6; #declare CC = 155; #declare CD = 164.4;
#declare F_Square = function(x,y,c) { 2.5 - max(abs(x-c), abs(y-18.6)) }
#declare F_Ragged = function { (f_noise3d(x*1.3,y*1.3,1)-.5)*.5 + (f_noise3d(x*5,y*5,2)-.5)*.25 }
#declare F_Clear = function { max(
  F_Step(F_Square(x,y,CD)+F_Ragged(x,y,z), -.12, .3),
  F_Step(F_Square(x,y,CC)+F_Ragged(x,y,z),-.1,.25)*(.06 + .95*F_Step(F_Mix(x*.5+3,y*.65,3)*.75+f_noise3d(x*1.2,y*5,3)*.35, .36,.78))) }
#declare Wear = .3;
#declare Unhurt = .3;
#include "panel.inc"
#include "smallwares.inc"
// B: the stripper has gone through everything; green dragged out across the cream.
#declare F_Drag = function { max(I_Letter(x+(f_noise3d(x*.8,y*.8,2)-.5)*3.4, y+(f_noise3d(x*.7,y*.9,6)-.5)*4+.8, 0).red,
  I_Letter(x+(f_noise3d(x*1.9,y*1.6,12)-.5)*2, y+1.8*f_noise3d(x*2.4,y*.7,3), 0).red*.7) }
#declare T_Eaten = texture {
  pigment { function { F_Drag(x,y,z)*F_Step(f_noise3d(x*2.2,y*.8,4)*.6+f_noise3d(x*6,y*2.5,5)*.4,.36,.72) + .2*f_noise3d(x*3,y*9,2) } pigment_map {
    [.1 function { F_Mix(x*.9,y*.9,3) } color_map { [.3 S(150,122,92)] [.5 S(206,186,146)] [.7 S(222,206,170)] }]
    [.35 S(142,140,112)] [.75 S(74,94,72)] [1 S(50,72,54)] } }
  normal { function { F_Mix(x*2,y*2,z) } .5 } finish { diffuse .8 specular .3 roughness .03 }
}
// A: untouched by the knife, the skin lifted in wrinkles.
#declare F_Wrinkle = function { pow(1-abs(2*f_noise3d(x*.75+f_noise3d(x*.5,y*.5,1)*3, y*1.05+f_noise3d(y*.6,x*.6,4)*3, 2)-1), 3) }
#macro Tape(X, Y, L, Turn)
  box { <-L/2,-.95,-.03>, <L/2,.95,0> texture { Masking translate X } rotate z*Turn translate <X,Y,-.002> }
#end
// Four strips round a square, laid by eye.
#macro Window_Tape(C, Seed)
  #local R = seed(Seed*17);
  Tape(C+rand(R)*.5, Row+3.55, 8.6+rand(R), rand(R)*1.6-.8)
  Tape(C-rand(R)*.5, Row-3.6, 8.4+rand(R), rand(R)*1.6-.8)
  union { Tape(C-3.55, Row, 8.6, 90+rand(R)*2-1) Tape(C+3.6, Row, 8.2, 90+rand(R)*2-1) translate z*-.03 }
#end
#macro Mark(File, X, Y)
  box { <-.9,-.9,-.005>, <.9,.9,0>
    texture { pigment { image_pattern { png File interpolate 2 once } translate <-.5,-.5,0> scale <1.8,1.8,1> color_map { [.3 rgb .015] [.75 rgbt <.02,.02,.02,1>] } } finish { diffuse .8 } }
    no_shadow translate <X,Y,-.07> }
#end
#declare Lean = .012;
Eye(<143,9.4,-38>, <149.6,18.4,0>, 56, .45, <153,18.4,0>)
Tube(<131,102,-85>, 1.1)
Hand_Lamp(<103,36,-26>, .62, 60)
Brick_Wall(60)
union {
  box { <0,0,0>, <188,92,.2> texture { T_Panel } }
  height_field { function 160,160 { min(1,F_Wrinkle(x*6,(1-y)*6,0)*.8)*min(1,8*min(min(x,1-x),min(y,1-y))) } smooth translate <-.5,-.01,-.5> rotate x*-90 scale <5,5,.28>
    texture { pigment { S(72,47,33) } normal { bumps .2 scale .3 } finish { diffuse .8 specular .5 roughness .025 } } translate <CA,Row,0> }
  intersection { box { <CB-2.5,Row-2.5,-.015>, <CB+2.5,Row+2.5,.1> }
    texture { function { F_Step(F_Square(x,y,CB)+F_Ragged(x,y,z),-.1,.15) } texture_map { [.4 Brown] [.6 T_Eaten] } } }
  Window_Tape(CA, 1) Window_Tape(CB, 2) Window_Tape(CC, 3) Window_Tape(CD, 4)
  Mark("mark-A.png",CA,Row+3.52) Mark("mark-B.png",CB,Row+3.6) Mark("mark-C.png",CC,Row+3.5) Mark("mark-D.png",CD,Row+3.55)
  // a dribble run out of C below the tape
  box { <CC-4,-8,-.012>, <CC+4,13.7,-.01> no_shadow texture { pigment { function { F_Step(1-abs(x-155-f_noise3d(1,y*.3,2)*1.5)*1.4-(13.4-y)*.05 + (f_noise3d(x*2,y*.4,1)-.5)*.4,.2,.5) } color_map { [0 srgbt <.2,.12,.08,1>] [1 srgbt <.2,.12,.08,.3>] } } finish { diffuse .7 } } }
}
