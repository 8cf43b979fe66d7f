// The van from in front on its near side, as it stands.
#declare Left = 1; #declare View = 1;
#include "van.pov"
