// The van from in front on its near side, as it came.
#declare View = 1;
#include "van.pov"
