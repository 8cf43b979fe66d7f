/** Code unit order: the same on every machine and in every locale. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/**
 * Texts in order, runs of digits in them compared as numbers: `brakes`, `brakes-2`, `brakes-10`. Zero only
 * for texts that are the same.
 */
export function compareNumbered(a: string, b: string): number {
  const [ours, theirs] = [runsOf(a), runsOf(b)];
  for (let n = 0; n < Math.min(ours.length, theirs.length); n += 1) {
    const order = compareRuns(ours[n] as string, theirs[n] as string);
    if (order !== 0) return order;
  }
  return ours.length - theirs.length || compareText(a, b);
}

/** What is between numbers and the numbers, in turn. */
function runsOf(text: string): readonly string[] {
  return text.match(/\d+|\D+/g) ?? [];
}

function compareRuns(a: string, b: string): number {
  if (!/^\d/.test(a) || !/^\d/.test(b)) return compareText(a, b);
  const [x, y] = [a.replace(/^0+/, ''), b.replace(/^0+/, '')];
  return x.length - y.length || compareText(x, y);
}
