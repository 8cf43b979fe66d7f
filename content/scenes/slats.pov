// Looking up inside: fourteen thin slats on three curved hoops, grey light between, the canvas torn at a corner.
#declare Fill = .25;
#include "workshop.inc"
#declare Lean = .05;
Eye(<-62,62,30>, <14,134,-9>, 84, 0, <0,130,0>)
Window(<-200,90,20>, <0,120,0>, 120, .55)
#declare Sky_Grey = rgb <.70,.74,.78>;
#macro Roof_Y(Z) (118+14*(1-pow(Z/72,2))) #end
#local R = seed(14);
#local I = 0;
#while (I < 14)
  #local Z = -66+I*10.15; #local H = Roof_Y(Z);
  #local Slope = degrees(atan2(-28*Z/5184,1));
  object { Soft_Box(<-110,0,-3.7+rand(R)*.5>, <110,1,3.7-rand(R)*.6>, .12) texture { Ash_Old translate <I*31,I*9,I*5> } rotate x*-Slope translate <0,H+2.6,Z> }
  #local I = I+1;
#end
#local K = -1; // hoops
#while (K < 2)
  #local J = -24;
  union { #while (J < 24)
    #local Z0 = J*3; #local Z1 = (J+1)*3;
    #local A = degrees(atan2(Roof_Y(Z1)-Roof_Y(Z0),3));
    box { <-2.2,-2.4,-1.62>, <2.2,2.4,1.62> texture { Ash_Old rotate y*90 translate <K*20,0,J*.0> } rotate x*-A translate <0,(Roof_Y(Z0)+Roof_Y(Z1))/2,(Z0+Z1)/2> }
    #local J = J+1; #end translate x*K*58 }
  #local K = K+1;
#end
// cant rails, pillars, and what skin shows
#local K = -1;
#while (K < 2)
  object { Soft_Box(<-112,112,-2.5>, <112,119,2.5>, .3) texture { Ash_Old translate K*40 } translate z*K*71 }
  #local I = -1; #while (I < 2) object { Soft_Box(<0,-2.4,-2.4>, <115,2.4,2.4>, .3) texture { Ash_Old } rotate z*90 translate <I*58,0,K*70> } #local I = I+1; #end
  box { <-112,-10,K*74-.2>, <112,116,K*74+.2> texture { Primer } }
  #local K = K+2;
#end
// canvas above the slats: dirty, letting a little light; gone over part, and hanging down at the far near-side corner
#declare Old_Canvas = texture { pigment { function { F_Mix(x*.08,y,z*.08)*.7+F_Mix(x*.9,1,z*.9)*.3 } color_map { [.3 S(66,60,50)] [.6 S(104,96,80)] [.8 S(54,48,40)] } } normal { function { sin(x*9)+sin(z*9) } .12 } finish { diffuse .7 emission Sky_Grey*.035 } }
#declare F_Gone = function { F_Mix(x*.022+4,1,z*.03)*.7 + F_Mix(x*.15,1,z*.15)*.2 + F_Step(x,20,110)*F_Step(-z,0,70)*.5 }
mesh2 { #local N = 60;
  vertex_vectors { (N+1)*(N+1), #local I = 0; #while (I <= N) #local J = 0; #while (J <= N) #local X = -112+224*I/N; #local Z = -74+148*J/N;
    <X, Roof_Y(Z)+4.2+f_noise3d(X*.05,1,Z*.09)*1.6, Z>, #local J = J+1; #end #local I = I+1; #end }
  face_indices { N*N*2, #local I = 0; #while (I < N) #local J = 0; #while (J < N) #local P = I*(N+1)+J; <P,P+1,P+N+1>, <P+1,P+N+2,P+N+1>, #local J = J+1; #end #local I = I+1; #end }
  texture { function { F_Gone(x,y,z) } texture_map { [.56 Old_Canvas] [.57 pigment { rgbt 1 } finish { diffuse 0 }] } } }
mesh2 { #local N = 40; // the hanging corner
  vertex_vectors { (N+1)*(N+1), #local I = 0; #while (I <= N) #local J = 0; #while (J <= N) #local U = I/N; #local V = J/N;
    #local Fray = (f_noise3d(U*11,1,2)-.5)*16+(f_noise3d(U*40,1,2)-.5)*5;
    <100-U*62, 130-V*(46-U*26+Fray)-6*U, -58+U*16+sin(U*17+V*2)*3.4*V+V*9*f_noise3d(U*3,V*2,5)>, #local J = J+1; #end #local I = I+1; #end }
  face_indices { N*N*2, #local I = 0; #while (I < N) #local J = 0; #while (J < N) #local P = I*(N+1)+J; <P,P+1,P+N+1>, <P+1,P+N+2,P+N+1>, #local J = J+1; #end #local I = I+1; #end }
  texture { Old_Canvas } }
box { <112,-10,-74>, <113,112,74> texture { Ash_Old } }
sky_sphere { pigment { Sky_Grey*1.25 } }
