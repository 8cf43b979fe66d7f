/** The thread that shows that the holder of a lock lives, however busy it is. It asks no clock: a new time is all that is looked at. */
import { fstatSync, futimesSync } from 'node:fs';
import { workerData } from 'node:worker_threads';

const EVERY_MS = 1000;

const open = workerData as number;
let seconds = Math.floor(fstatSync(open).mtimeMs / 1000);

setInterval(() => {
  seconds += 1;
  futimesSync(open, seconds, seconds);
}, EVERY_MS);
