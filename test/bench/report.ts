import type { Aim } from './aims.ts';
import type { Measured } from './rounds.ts';

/** The aims of builds, as shares of what they are held against. */
const AIMS = { cold: 0.8, memory: 0.8, ownCold: 0.25, plainEvening: 0.15, check: 0.1, checkAgain: 0.05 } as const;
/** A cold build is judged from so many sessions on: below it, the start of a process is most of it. */
const JUDGED_FROM = 5000;
/** The last step may cost that many times what the first does: chance has its share in a difference of two runs. */
const FLAT = 1.3;

/** A build without anything kept, and its memory. */
export function coldAims({ sessions, cold, empty }: Measured): Aim[] {
  if (cold.ours === null) return [];
  const judged = (below: number): number | null => (sessions >= JUDGED_FROM ? below : null);
  const { ours, plain } = cold;
  return [
    told(sessions, 'cold build', ours.wall, ' s'),
    told(sessions, 'cold build of the plain site', plain.wall, ' s'),
    aim(sessions, 'cold build, to plain', ours.wall / plain.wall, judged(AIMS.cold)),
    told(sessions, 'cold build, user time of processors, to plain', ours.user / plain.user, ''),
    aim(sessions, 'cold build, peak of memory, to plain', ours.peak / plain.peak, judged(AIMS.memory)),
    ...(empty === null
      ? []
      : [told(sessions, `floor: Astro with ${empty.pages} empty pages, to plain`, empty.usage.wall / plain.wall, '')]),
  ];
}

/** The build after one note more. */
export function eveningAims({ sessions, cold, second, evening }: Measured): Aim[] {
  if (cold.ours === null || evening.ours === null) return [];
  return [
    told(sessions, 'after one evening', evening.ours.wall, ' s'),
    aim(sessions, 'after one evening, to our own cold build', evening.ours.wall / cold.ours.wall, AIMS.ownCold),
    aim(sessions, 'after one evening, to the plain site after the same', evening.ours.wall / evening.plain.wall, AIMS.plainEvening),
    ...(second === null ? [] : [told(sessions, 'nothing changed, to our own cold build', second.wall / cold.ours.wall, '')]),
  ];
}

/** The start of a process is in each. */
export function checkAims({ sessions, cold, check }: Measured): Aim[] {
  if (check === null) return [];
  const judged = (below: number): number | null => (sessions >= JUDGED_FROM ? below : null);
  return [
    aim(sessions, 'check, nothing kept, to the plain cold build', check.first.wall / cold.plain.wall, judged(AIMS.check)),
    aim(sessions, 'check again, to the plain cold build', check.again.wall / cold.plain.wall, judged(AIMS.checkAgain)),
  ];
}

const aim = (sessions: number, what: string, figure: number, below: number | null): Aim => ({
  what: `${sessions} sessions: ${what}`,
  figure,
  below,
  unit: '',
});

const told = (sessions: number, what: string, figure: number, unit: Aim['unit']): Aim => ({ ...aim(sessions, what, figure, null), unit });

/** A figure of a journal of some length. */
export interface Point {
  readonly sessions: number;
  readonly seconds: number;
}

/**
 * What one session more costs at the end, to what it costs at the beginning: the start of a process is in neither.
 *
 * @param points of three lengths or more, the shortest first; null for fewer
 * @returns a figure of null where a longer journal took less: chance was more than what was sought
 */
export function flatness(what: string, points: readonly Point[]): Aim | null {
  const steps = points.slice(1).map((point, n) => {
    const before = points[n] ?? point;
    return (point.seconds - before.seconds) / (point.sessions - before.sessions);
  });
  const [first, last] = [steps[0], steps.at(-1)];
  if (steps.length < 2 || first === undefined || last === undefined) return null;
  const isSeen = first > 0 && last > 0;
  const sizes = points.map(({ sessions }) => sessions).join(', ');
  return {
    what: `${what}: what a session adds, the last step to the first (${sizes})`,
    figure: isSeen ? last / first : null,
    below: FLAT,
    unit: '',
  };
}
