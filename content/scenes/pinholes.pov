// The bottom of the tank in the dark with a lamp inside it: four points of light in a chalk ring.
#declare Base = .012;
#include "stage.inc"
Look(<2,-3,-26>, <0,0,0>, 58)
light_source { <-40,40,-50>, rgb <.5,.6,.8>*.16 }
light_source { <30,-30,-30>, rgb <1,.75,.5>*.1 }
#declare F_Rusty = function { F_Step(1.15-sqrt((x-3)*(x-3)+(y+1)*(y+1))*.085 + F_Mix(x*.5,y*.5,z)*.9-.45, .3, .7) }
box { <-40,-30,0>, <26,12,4>
  texture { function { F_Rusty(x,y,0) } texture_map { [.35 Black_Paint(.3,.3)] [.6 Rust] } } }
// The rolled seam along the edge and the corner beyond it.
cylinder { <-60,12.4,.2>, <26,12.4,.2>, 1.1 texture { Black_Paint(.5,.3) } } cylinder { <26.4,-60,.2>, <26.4,12,.2>, 1.1 texture { Black_Paint(.5,.3) } }
// Chalk: a ring drawn by hand, broken by the roughness under it.
box { <-20,-20,-.02>, <22,12,-.01> pigment { function { max(0, 1-F_Step(abs(sqrt((x-3)*(x-3)*.9+(y+1)*(y+1)*1.1) - 7.4 - .5*f_noise3d(x*.25,y*.25,1)), .16, .44) - F_Step(f_noise3d(x*6,y*6,2),.5,.75)) }
  color_map { [.2 rgbt <1,1,1,1>] [.6 rgbt <.92,.9,.86,.1>] } } finish { ambient .28 diffuse .9 } no_shadow }
#macro Pinhole(P, S)
  #local PX = P.x; #local PY = P.y;
  disc { P+<0,0,-.03>, z, S*7 pigment { function { min(1,sqrt((x-PX)*(x-PX)+(y-PY)*(y-PY))/(S*7)) }
    color_map { [0 rgbt <1,.9,.66,.1>] [.13 rgbt <1,.86,.56,.3>] [.2 rgbt <1,.6,.3,.9>] [.4 rgbt <1,.5,.2,.975>] [1 rgbt <1,.4,.1,1>] } } finish { ambient 0 diffuse 0 emission 1.1 } no_shadow }
  disc { P+<0,0,-.05>, z, S pigment { rgb 1 } finish { diffuse 0 emission <3,2.6,1.9> } no_shadow }
  light_source { P+<0,0,-.6>, rgb <1,.7,.38>*.5*S fade_distance 1.6 fade_power 2 }
#end
Pinhole(<.6,1.4,0>, .3) Pinhole(<4.6,.2,0>, .42) Pinhole(<2.2,-3.1,0>, .24) Pinhole(<6.4,-3.4,0>, .33)
