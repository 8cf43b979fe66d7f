// The bare seat frame against a brick wall. Left = 0: two of its springs broken; 1: two new ones, painted.
#declare Base = .15;
#include "stage.inc"
#ifndef (Left) #declare Left = 0; #end
#declare T_Black = texture { Black_Paint(.45-.4*Left,.3) }
Look(<-62,78,-150>, <0,42,0>, 45)
Door_Light(<-170,170,-170>, <0,30,0>, 1.5)
Floor() Brick_Wall(36)
// A bent tube as rods and balls, which trace far quicker than a sweep.
#macro Tube_Path(P) union { sphere { P[0], 1.6 } #local I = 1; #while (I < dimension_size(P,1)) cylinder { P[I-1], P[I], 1.6 } sphere { P[I], 1.6 } #local I = I+1; #end } #end
union {
  #local K = -1;
  #while (K < 2)
    object { Tube_Path(array[4] { <K*23,1.6,-22>, <K*23,32,-24>, <K*23,34,20>, <K*22,82,28> }) }
    object { Tube_Path(array[2] { <K*23,1.6,22>, <K*23,33,16> }) }
    #local K = K+2;
  #end
  object { Tube_Path(array[2] { <-23,32,-24>, <23,32,-24> }) } object { Tube_Path(array[2] { <-23,34,19>, <23,34,19> }) }
  object { Tube_Path(array[2] { <-22,82,28>, <22,82,28> }) } object { Tube_Path(array[2] { <-22.4,56,24>, <22.4,56,24> }) }
  object { Tube_Path(array[2] { <-23,9,-22.5>, <-23,9,21> }) } object { Tube_Path(array[2] { <23,9,-22.5>, <23,9,21> }) }
  texture { T_Black }
}
// Flat springs: zigzag wires hooked front to back; the third and fifth are broken and hang.
#local I = 0;
#while (I < 6)
  #local X = -18+I*7.2; #local Cut = ((I = 2) | (I = 4))*(1-Left);
  union {
    #local J = 0;
    #while (J < 22)
      #local Z = -23+J*2; #local D = 0;
      #if (Cut) #if (J > 11) #local Z = -1+(J-11)*.5; #local D = -12-(J-11)*1.1; #else #local D = -J*1.05; #end #end
      #local P = <X+mod(J,2)*4.6-2.3, 33.4+D-2.6*sin(pi*J/21), Z>;
      sphere { P, .38 } #if (J > 0) cylinder { Before, P, .38 } #end
      #declare Before = P;
      #local J = J+1;
    #end
    texture { #if (Left & ((I = 2) | (I = 4))) Steel_Bright #else Steel_Dull #end } }
  #local I = I+1;
#end
#if (!Left) cylinder { <-3.6,33,18>, <-4.4,26,13>, .38 texture { Rust } } cylinder { <10.8,33,18>, <11.8,24,15>, .38 texture { Rust } } #end
