/** What was aimed at, and what came of it. */
export interface Aim {
  readonly what: string;
  readonly figure: number;
  /** The figure is to stay under it. */
  readonly below: number;
  /** Empty for a ratio. */
  readonly unit: '' | ' s';
}

const WIDTH = 72;

/** One line for each aim, met or missed. */
export function aimsTable(aims: readonly Aim[]): string {
  const head = `${'Aims'.padEnd(WIDTH)}${'measured'.padStart(10)}${'aim'.padStart(10)}`;
  const lines = aims.map(
    ({ what, figure, below, unit }) =>
      `${what.padEnd(WIDTH)}${(figure.toFixed(3) + unit).padStart(10)}${`< ${below}${unit}`.padStart(10)}  ${figure < below ? 'met' : 'MISSED'}`,
  );
  return [head, ...lines].join('\n');
}
