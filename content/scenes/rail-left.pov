// The near waist rail with its scarf.
#declare Left = 1;
#include "waist-rail.pov"
