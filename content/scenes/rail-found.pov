// The near waist rail where the ladder bracket was.
#declare Left = 0;
#include "waist-rail.pov"
