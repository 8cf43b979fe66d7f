import type { Usage } from './measure-process.ts';
import type { Measured } from './rounds.ts';

/** Of the first column of every table. */
export const WIDTH = 44;

interface Row {
  readonly what: string;
  readonly ours: number | null;
  readonly plain: number;
  readonly unit: 's' | 'MB';
  /** The ratio has to stay under it. */
  readonly aim: number | null;
}

/** Seconds as `12.3 s`, bytes as `456 MB`. */
function figure(value: number | null, unit: Row['unit']): string {
  if (value === null) return '–';
  return unit === 's' ? `${value.toFixed(2)} s` : `${Math.round(value / 1e6)} MB`;
}

function rowsOf({ check, cold, second }: Measured): Row[] {
  const three = (what: string, ours: Usage | null, plain: Usage, wall: number, peak: number | null): Row[] => [
    { what: `${what}, wall`, ours: ours?.wall ?? null, plain: plain.wall, unit: 's', aim: wall },
    { what: `${what}, user CPU`, ours: ours?.user ?? null, plain: plain.user, unit: 's', aim: null },
    { what: `${what}, peak memory`, ours: ours?.peak ?? null, plain: plain.peak, unit: 'MB', aim: peak },
  ];
  return [
    { what: 'check, to the plain cold build, wall', ours: check?.first.wall ?? null, plain: cold.plain.wall, unit: 's', aim: 0.08 },
    { what: 'check again, to the same, wall', ours: check?.again.wall ?? null, plain: cold.plain.wall, unit: 's', aim: null },
    { what: 'check, user CPU', ours: check?.first.user ?? null, plain: cold.plain.user, unit: 's', aim: null },
    ...three('cold build', cold.ours, cold.plain, 0.6, 0.6),
    ...three('second build, nothing changed', second.ours, second.plain, 0.5, null),
  ];
}

/**
 * The table of one size: ours, plain, and the first as a share of the second. Aims are judged at the
 * size they were set for.
 */
export function sizeTable(measured: Measured, judged: boolean): string {
  const rows = rowsOf(measured).map(({ what, ours, plain, unit, aim }) => {
    const ratio = ours === null ? null : ours / plain;
    return [
      what.padEnd(WIDTH),
      figure(ours, unit).padStart(10),
      figure(plain, unit).padStart(10),
      (ratio === null ? '–' : ratio.toFixed(3)).padStart(8),
      aim === null ? '' : `  aim < ${aim}${judged && ratio !== null ? verdict(ratio < aim) : ''}`,
    ].join('');
  });
  const sessions = measured.sessions.toLocaleString('en');
  const head = `${`${sessions} sessions`.padEnd(WIDTH)}${'Asfound'.padStart(10)}${'plain'.padStart(10)}${'ratio'.padStart(8)}`;
  return [head, ...rows, ...emptyLine(measured)].map((row) => row.trimEnd()).join('\n');
}

/** The ground under every Astro site of that size, ours among them. */
function emptyLine({ empty, cold }: Measured): string[] {
  if (empty === null) return [];
  const { wall, peak } = empty.usage;
  const shares = `${(wall / cold.plain.wall).toFixed(3)} and ${(peak / cold.plain.peak).toFixed(3)} of plain`;
  return [
    `Astro with ${empty.pages.toLocaleString('en')} empty pages, as many as ours: ${figure(wall, 's')}, ${figure(peak, 'MB')}; ${shares}`,
  ];
}

/** `: met` or `: MISSED`. */
export function verdict(met: boolean): string {
  return met ? ': met' : ': MISSED';
}

/**
 * What one more session costs between each size and the next, which leaves the start of the process
 * out; flat when the last step costs about what the first does.
 *
 * @param unit what a figure is in: milliseconds of seconds given, or as it is
 */
export function perSession(what: string, points: readonly { readonly sessions: number; readonly seconds: number }[]): string {
  const steps = points.slice(1).map((point, n) => {
    const before = points[n] ?? point;
    return ((point.seconds - before.seconds) / (point.sessions - before.sessions)) * 1000;
  });
  const said = steps.map((step, n) => `${step.toFixed(3)} ms (${points[n]?.sessions} to ${points[n + 1]?.sessions})`).join(', ');
  const [first, last] = [steps[0], steps.at(-1)];
  const growth = steps.length > 1 && first !== undefined && last !== undefined ? `  last ÷ first ${(last / first).toFixed(2)}` : '';
  return `${what.padEnd(WIDTH)}${said}${growth}`;
}
