// The rear doors as left: HOT AT SIX on the near one.
#declare Left = 1;
#include "rear-doors.pov"
