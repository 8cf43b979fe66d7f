// All twelve runners from where the nine were taken; the third, seventh and eighth are new.
#declare Made = 1;
#include "runners.pov"
