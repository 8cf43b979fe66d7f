// Loaded before the program: the nth call that changes the disk below a folder fails as on a full disk, or on one that takes no writing, and so does every later one.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const [code = 'ENOSPC', nth = '1', under = '/'] = (process.env.ASFOUND_TORTURE_FAIL ?? '').split(' ');
/** Room is made by removing, and renaming takes none. */
const CHANGING =
  code === 'ENOSPC'
    ? ['writeFileSync', 'writeSync', 'mkdirSync', 'copyFileSync', 'linkSync', 'symlinkSync', 'openSync']
    : [
        'writeFileSync',
        'mkdirSync',
        'copyFileSync',
        'linkSync',
        'symlinkSync',
        'openSync',
        'renameSync',
        'rmSync',
        'unlinkSync',
        'rmdirSync',
        'utimesSync',
      ];
let done = 0;

/** Open files below the folder. */
const below = new Set();
const noted = (path, done) => (error, fd) => {
  if (!error && isBelow(path)) below.add(fd);
  done(error, fd);
};

const pathsOf = (name, args) => (['renameSync', 'copyFileSync', 'linkSync', 'symlinkSync'].includes(name) ? [args[1]] : [args[0]]);
const isRead = (name, args) => name === 'openSync' && (args[1] === undefined || args[1] === 'r');
const isBelow = (path) => typeof path === 'number' || String(path).startsWith(under);

function failing(name, real) {
  return (...args) => {
    if (!isRead(name, args) && pathsOf(name, args).some(isBelow)) {
      done += 1;
      if (done >= Number(nth)) {
        const text = code === 'ENOSPC' ? 'no space left on device' : 'read-only file system';
        throw Object.assign(new Error(`${code}: ${text}, ${name} '${args[0]}'`), {
          code,
          syscall: name.replace('Sync', ''),
          path: String(args[0]),
        });
      }
    }
    return real(...args);
  };
}

for (const name of CHANGING) fs[name] = failing(name, fs[name]);
/** Streams write by these. */
for (const name of ['open', 'write', 'writev']) {
  const real = fs[name];
  const sync = failing(`${name}Sync`, () => undefined);
  const isOurs = name === 'open' ? (args) => typeof args[1] === 'string' && args[1] !== 'r' : ([fd]) => below.has(fd);
  fs[name] = (...args) => {
    try {
      if (isOurs(args)) sync(...args);
    } catch (error) {
      return process.nextTick(args.at(-1), error);
    }
    return name === 'open' && isOurs(args) ? real(...args.slice(0, -1), noted(args[0], args.at(-1))) : real(...args);
  };
}
for (const name of ['writeFile', 'mkdir', 'copyFile']) {
  const real = fs.promises[name];
  const sync = failing(`${name}Sync`, () => undefined);
  fs.promises[name] = async (...args) => {
    sync(...args);
    return await real(...args);
  };
}
syncBuiltinESMExports();
process.on('exit', () => {
  // Not below the folder that fails.
  if (process.env.ASFOUND_TORTURE_COUNT) fs.appendFileSync(process.env.ASFOUND_TORTURE_COUNT, `${done}\n`);
});
