// The body as a bare ash skeleton on its black chassis; cold light from a window on the left.
#declare Base = .17;
#include "stage.inc"
#include "van.inc"
Look(<400,190,-330>, <72,100,0>, 50)
Soft_Light(<-40,260,-420>, <90,100,0>, 120, rgb <.82,.93,1.1>*1.7)
Fill_Light(<500,260,-300>, rgb <1,.95,.88>*.14)
Floor() Brick_Wall(230)
plane { x, -330 texture { Whitewashed_Brick rotate y*90 translate x*-330 } }
object { Skeleton() }
object { Chassis() }
object { Cab(Brown) }
object { Wheels(Brown) }
