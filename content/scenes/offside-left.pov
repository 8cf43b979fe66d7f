// The offside panel as left.
#declare Left = 1;
#include "offside-panel.pov"
