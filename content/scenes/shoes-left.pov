// The rear shoes lined anew.
#declare Left = 1;
#include "shoes.pov"
