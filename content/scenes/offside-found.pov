// The offside panel as it came off.
#declare Left = 0;
#include "offside-panel.pov"
