// Loaded before the program: its clock stands so many hours off, and jumps on or back at every look.
const hours = Number(process.env.ASFOUND_TORTURE_HOURS ?? '0');
const real = Date.now;
let looks = 0;
const now = () => {
  looks += 1;
  return real() + hours * 3_600_000 + (looks % 3 === 0 ? -1 : 1) * looks * 61_000;
};
Date.now = now;
globalThis.Date = new Proxy(Date, { construct: (target, args) => Reflect.construct(target, args.length === 0 ? [now()] : args) });
