// The near rear door as it came off.
#declare Left = 0;
#include "door.pov"
