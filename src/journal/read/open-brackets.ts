/** A bracket that nothing closes: at each word behind it, to the end of its paragraph, the parser looks back to it. */

/** In characters. */
const MOST_BEHIND = 6000;

/** Where these stand, a closing bracket may be no mark. */
const NO_MARKS = /[`\\<]/;

/** @returns the first line that has too much behind an open bracket, at its offset; null where none does */
export function tooFarFromBracket(prose: string): { readonly at: number; readonly message: string } | null {
  let [open, behind, at] = [0, 0, 0];
  for (const line of prose.split('\n')) {
    if (line.trim() === '') [open, behind] = [0, 0];
    const closes = !NO_MARKS.test(line);
    for (const { 0: mark, index } of line.matchAll(/[[\]]/g)) {
      if (mark === '[' && open === 0) behind = -index;
      if (mark === '[') open += 1;
      else if (closes && open > 0) open -= 1;
      if (open === 0) behind = 0;
      if (behind + index > MOST_BEHIND) return tooFar(at);
    }
    if (open > 0) behind += line.length + 1;
    if (behind > MOST_BEHIND) return tooFar(at);
    at += line.length + 1;
  }
  return null;
}

function tooFar(at: number): { readonly at: number; readonly message: string } {
  return { at, message: `This paragraph has more than ${MOST_BEHIND} characters behind a bracket (\`[\`) that nothing closes.` };
}
