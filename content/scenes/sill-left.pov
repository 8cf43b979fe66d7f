// The near rear corner of the frame with its new sill.
#declare Left = 1;
#include "rear-corner.pov"
