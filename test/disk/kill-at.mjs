// Loaded before a script: the process is killed before its nth call that changes the disk.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

let left = Number(process.env.KILL_AT);
for (const name of ['writeSync', 'openSync', 'mkdirSync', 'renameSync', 'rmSync', 'chmodSync', 'linkSync']) {
  const real = fs[name];
  fs[name] = (...args) => {
    left -= 1;
    if (left === 0) process.kill(process.pid, 'SIGKILL');
    return real(...args);
  };
}
syncBuiltinESMExports();
