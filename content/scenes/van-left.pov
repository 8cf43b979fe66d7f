// The whole van as it stands, from where it was taken on the first day.
#declare Left = 1;
#include "van.pov"
