// Behind the driver's place as found: no bulkhead.
#declare Stage = 0;
#include "ply.pov"
