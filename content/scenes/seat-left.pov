// The seat frame mended.
#declare Left = 1;
#include "seat-frame.pov"
