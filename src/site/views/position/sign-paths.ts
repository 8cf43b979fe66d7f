import type { Sign } from './life-events.ts';

const DIAMOND = 'M0-7L7 0L0 7L-7 0Z';

/** The shapes of what happened, drawn about a point, in pixels: told apart without colour and when printed small. */
export const SIGN_PATHS: Readonly<Record<Sign, string>> = {
  decision: DIAMOND,
  superseded: DIAMOND,
  off: 'M0-6L6.5 5H-6.5Z',
  on: 'M0 6L6.5-5H-6.5Z',
  moved: 'M6 0L-5 6V-6Z',
  out: 'M-5-5L0 0L-5 5M1-5L6 0L1 5',
  returned: 'M5-5L0 0L5 5M-1-5L-6 0L-1 5',
  gone: 'M-5-5L5 5M5-5L-5 5',
  several: 'M0-7.5L6-1H-6ZM0 7.5L6 1H-6Z',
  work: 'M-5-5H5V5H-5Z',
  picture: 'M-8-6H8V6H-8ZM-8 3.5L-3-1L1 3L3.5 1L8 4',
};
