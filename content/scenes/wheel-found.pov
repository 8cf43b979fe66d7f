// The near rear wheel as it came.
#declare Left = 0;
#include "wheel.pov"
