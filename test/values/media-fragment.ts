/**
 * A reader of the time of a Media Fragment that shares nothing with the writer: made from the grammar of
 * Media Fragments URI 1.0 (W3C), section 4.2.1, `npttimedef`, with hours and minutes too.
 */
export interface FragmentTime {
  readonly start: number;
  /** Null: to the end. */
  readonly end: number | null;
}

const CLOCK = String.raw`(?:\d+:[0-5]\d:[0-5]\d|[0-5]\d:[0-5]\d|\d+)(?:\.\d*)?`;
const FRAGMENT = new RegExp(`^#t=(?:npt:)?(?:(${CLOCK})(?:,(${CLOCK}))?|,(${CLOCK}))$`);

/** The time a fragment names; null when it is invalid: the end must be later than the start. */
export function readFragment(text: string): FragmentTime | null {
  const [all, from, to, only] = FRAGMENT.exec(text) ?? [];
  if (all === undefined) return null;
  const start = from === undefined ? 0 : secondsOf(from);
  const last = to ?? only;
  const end = last === undefined ? null : secondsOf(last);
  return end !== null && end <= start ? null : { start, end };
}

function secondsOf(clock: string): number {
  return clock.split(':').reduce((sum, piece) => sum * 60 + Number(piece), 0);
}
