// The near rear wheel on the concrete. Left = 0: as it came, tyre flat, under its mudguard and the brown lower panel.
// Left = 1: a sound tyre, an axle stand pushed aside; panel and mudguard are still off, so sill and pillar stand bare.
#declare Base = .2;
#ifndef (Left) #declare Left = 1; #end
#include "stage.inc"
#include "van.inc"
Look(<-38,52,-150>, <14,32,0>, 46)
Door_Light(<-220,130,-190>, <0,30,0>, 1.25)
Floor() Brick_Wall(150)
#if (Left)
  object { Wheel(Brown) translate <0,32.4,0> }
  object { Stand() rotate y*20 translate <62,0,-22> }
  // sill and a pillar on it, the frame behind, the tired spring reset
  object { Rounded(<56,-2.6,-2.6>, <190,2.6,2.6>, .4) rotate z*90 translate <-60,0,-7> texture { Ash_Old rotate z*90 } }
  object { Rounded(<56,-2.6,-2.6>, <190,2.6,2.6>, .4) rotate z*90 translate <8,0,-7> texture { Ash_Old rotate z*90 translate 5 } }
  object { Rounded(<-120,56,-10>, <72,62.5,-4>, .4) texture { Ash_Old } }
  box { <-160,42,26>, <70,54,32> texture { T_Black } }
#else
  object { Wheel_Flat(Brown) }
  difference { union { cylinder { <0,29,-10>, <0,29,40>, 43.5 } box { <-120,52,-6>, <70,130,40> } } cylinder { <0,29,-60>, <0,29,60>, 39.5 } box { <-99,-24,-60>, <99,40,60> } texture { Brown } }
  object { Rounded(<-120,79,-8>, <71,83,-5>, .8) texture { Brown } }
#end
