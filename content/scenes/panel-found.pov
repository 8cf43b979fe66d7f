// The nearside panel as it came off the van.
#declare Cleared = 0;
#include "whole-name.pov"
