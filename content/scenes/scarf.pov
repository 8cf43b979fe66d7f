// A scarf of 1 in 8 in the waist rail, dry, opened by a finger's width.
#declare Base = .13;
#include "stage.inc"
#include "rail.inc"
Look(<-10,38,-60>, <0,3,-1>, 48)
Evening_Light(<46,24,-30>)
Bench_Top(-50,70) Brick_Wall(72)
union {
  Scarf(1.5)
  // Pencil: the ends of the cut and a line along it, a face mark.
  Pencil(<-20.5,2.53,-2.3>, <-20.5,2.53,2.3>) Pencil(<-20.5,2.5,-2.28>, <-20.5,-2.5,-2.28>) Pencil(<21.8,3.9,-2.28>, <21.8,-1,-2.28>)
  Pencil(<-30,2.53,-1>, <-27,2.53,1>) Pencil(<-27,2.53,1>, <-25,2.53,-1.4>) Pencil(<27,4.03,-1>, <30,4.03,1>) Pencil(<30,4.03,1>, <32,4.03,-1.4>)
  translate y*2.5
}
// A pencil and a chisel on the bench.
union { cylinder { 0, x*13, .36 pigment { S(150,40,32) } finish { specular .4 roughness .02 } } cone { x*13, .36, x*14.6, .06 texture { Ash_New } } rotate y*28 translate <-16,.4,-13> }
union { Rounded(<0,0,-.9>, <14,.35,.9>, .1) texture { Steel_Bright } rotate y*-16 translate <4,.5,-12> }
union { cylinder { x*14, x*16, .7 texture { Brass } } Rounded(<16,-1.2,-1.2>, <27,1.2,1.2>, 1.1) texture { Ash_New } rotate y*-16 translate <4,1.2,-12> }
