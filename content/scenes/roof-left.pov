// The roof from the wall, as it stands: new canvas under cream.
#declare Left = 1; #declare View = 2;
#include "van.pov"
