import type { Aim } from './aims.ts';
import type { Usage } from './measure-process.ts';
import type { Measured } from './rounds.ts';

/** Of the first column of every table. */
export const WIDTH = 50;

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

function rowsOf({ check, cold, second, evening }: Measured): Row[] {
  const three = (what: string, ours: Usage | null, plain: Usage, wall: number, peak: number | null): Row[] => [
    { what: `${what}, wall`, ours: ours?.wall ?? null, plain: plain.wall, unit: 's', aim: wall },
    { what: `${what}, user CPU`, ours: ours?.user ?? null, plain: plain.user, unit: 's', aim: null },
    { what: `${what}, peak memory`, ours: ours?.peak ?? null, plain: plain.peak, unit: 'MB', aim: peak },
  ];
  const ofCheck: Row[] =
    check === null
      ? []
      : [
          { what: 'check, to the plain cold build, wall', ours: check.first.wall, plain: cold.plain.wall, unit: 's', aim: 0.1 },
          { what: 'check again, to the same, wall', ours: check.again.wall, plain: cold.plain.wall, unit: 's', aim: 0.05 },
          { what: 'check, user CPU', ours: check.first.user, plain: cold.plain.user, unit: 's', aim: null },
        ];
  const toItself: Row[] =
    cold.ours === null
      ? []
      : [
          {
            what: 'after one evening, to our own cold build, wall',
            ours: evening.ours?.wall ?? null,
            plain: cold.ours.wall,
            unit: 's',
            aim: 0.25,
          },
          {
            what: 'after one evening, to the same, user CPU',
            ours: evening.ours?.user ?? null,
            plain: cold.ours.user,
            unit: 's',
            aim: null,
          },
        ];
  return [
    ...ofCheck,
    ...three('cold build', cold.ours, cold.plain, 0.8, 0.8),
    ...(second === null ? [] : three('second build, nothing changed', second.ours, second.plain, 0.5, null)),
    ...three('after one evening', evening.ours, evening.plain, 0.15, null),
    ...toItself,
  ];
}

/** The aims of one size and what came of them. */
export function aimsOf(measured: Measured): Aim[] {
  return rowsOf(measured).flatMap(({ what, ours, plain, aim }) =>
    aim === null || ours === null
      ? []
      : [
          {
            what: `${measured.sessions} sessions: ${what}${what.includes(', to ') ? '' : ', to plain'}`,
            figure: ours / plain,
            below: aim,
            unit: '' as const,
          },
        ],
  );
}

/** The table of one size: ours, plain, and the first as a share of the second. */
export function sizeTable(measured: Measured): string {
  const rows = rowsOf(measured).map(({ what, ours, plain, unit }) => {
    const ratio = ours === null ? null : ours / plain;
    return [
      what.padEnd(WIDTH),
      figure(ours, unit).padStart(10),
      figure(plain, unit).padStart(10),
      (ratio === null ? '–' : ratio.toFixed(3)).padStart(8),
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
