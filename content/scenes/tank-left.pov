// The tank as left, before it went back up.
#declare Left = 1;
#include "tank-out.pov"
