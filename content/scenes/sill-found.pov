// The near rear corner of the frame as found.
#declare Left = 0;
#include "rear-corner.pov"
