// The same hub as left: two new studs pressed in, the rust brushed off, everything else as it was.
#declare Renewed = 1;
#include "studs.pov"
