// A coil of cotton-braided cable, black with a red tracer, ring terminals and a roll of black cotton tape.
#declare Base = .18;
#include "stage.inc"
Look(<-4,36,-34>, <2,1,-1>, 48)
Evening_Light(<-40,30,10>)
Bench_Top(-60,70)
// Sleeved cable: short lengths whose angle about the cable carries the tracer.
#macro Braid(F_X, F_Y, F_Z, T0, T1, Steps)
  #local J = 0;
  #while (J < Steps)
    #local T = T0+(T1-T0)*J/Steps; #local U = T0+(T1-T0)*(J+1.15)/Steps;
    #local A = <F_X(T),F_Y(T),F_Z(T)>; #local B = <F_X(U),F_Y(U),F_Z(U)>;
    cylinder { A, B, .36 }
    #local Side = vnormalize(vcross(B-A, y)); #local H = T*Trace;
    cylinder { A+(Side*cos(H)+y*sin(H))*.22, B+(Side*cos(H+.2)+y*sin(H+.2))*.22, .18 pigment { S(168,34,28) } }
    #local J = J+1;
  #end
#end
#declare Trace = 26;
#declare CR = function(u) { 9.2+1.1*sin(u*.37)+.8*cos(u*.91) }
#declare CX = function(u) { CR(u)*cos(u) } #declare CZ = function(u) { CR(u)*sin(u)*.98 } #declare CY = function(u) { .4+u/(2*pi)*.3+.25*sin(u*1.7) }
union { Braid(CX, CY, CZ, 0, 2*pi*11.6, 1100)
  #declare DX = function(u) { CX(72.88)+u*12+sin(u*5)*1.2 } #declare DY = function(u) { max(.4,3.8-u*4.4) } #declare DZ = function(u) { CZ(72.88)-u*9+sin(u*6)*1.4 }
  #declare Trace = 60; Braid(DX, DY, DZ, 0, 1.25, 60)
  pigment { function { f_noise3d(x*9,y*9,z*9) } color_map { [.3 S(20,19,19)] [.7 S(46,44,42)] } } normal { granite .4 scale .2 }
  translate <-7,0,2>
}
// Three ties of twine round the coil.
#local I = 0; #while (I < 3) torus { 2.5, .17 scale <1.1,1,1> rotate x*90 translate x*9.2 rotate y*(I*120+20) translate <-7,2.2,2> texture { Twine } } #local I = I+1; #end
#macro Terminal()
  union { difference { cylinder { 0, y*.14, .75 } cylinder { y*-1, y*1, .4 } } box { <.5,0,-.28>, <1.3,.14,.28> } difference { cylinder { <1.2,.32,0>, <2.4,.32,0>, .34 } cylinder { <1,.32,0>, <3,.32,0>, .22 } } texture { Brass } }
#end
#local R = seed(31); #local I = 0;
#while (I < 13) object { Terminal() scale 1.25 rotate y*rand(R)*360 translate <4+rand(R)*14,.02,-13+rand(R)*8> } #local I = I+1; #end
// The roll of tape, a tail of it loose.
union {
  difference { cylinder { 0, y*2.4, 4.2 } cylinder { y*-1, y*3, 2 } pigment { function { sin(sqrt(x*x+z*z)*34)*.5+.5 } color_map { [0 S(18,18,18)] [1 S(44,43,41)] } } }
  difference { cylinder { y*-.01, y*2.42, 2.2 } cylinder { y*-1, y*3, 1.9 } pigment { S(176,150,108) } }
  box { <0,0,-4.2>, <8,2.4,-4.1> pigment { S(30,30,29) } normal { bumps .4 scale .4 } rotate y*8 }
  translate <17,0,6>
}
