// The roof from the wall, as it came: canvas painted too often.
#declare View = 2;
#include "van.pov"
