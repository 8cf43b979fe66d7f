// The body as a bare ash skeleton on its black chassis, on stands; wheels, lamps and the near front wing are off; the cab has no back.
#declare Base = .17;
#declare Near_Wing = 0;
#declare Lamps = 0;
#include "stage.inc"
#include "van.inc"
Look(<400,190,-330>, <72,100,0>, 50)
Soft_Light(<-40,260,-420>, <90,100,0>, 120, rgb <.82,.93,1.1>*1.7)
Fill_Light(<500,260,-300>, rgb <1,.95,.88>*.14)
Floor() Brick_Wall(230)
plane { x, -330 texture { Whitewashed_Brick rotate y*90 translate x*-330 } }
object { Skeleton(Ash_Old) }
object { Chassis() }
difference { object { Cab(Brown) } box { <-70,60,-63>, <9,172,63> texture { pigment { S(34,25,20) } } } }
object { On_Stands() }
