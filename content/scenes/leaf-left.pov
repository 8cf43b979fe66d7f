// The near spring's leaves as they came back.
#declare Left = 1;
#include "leaf-pack.pov"
