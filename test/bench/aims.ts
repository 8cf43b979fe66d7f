/** What was aimed at, and what came of it. */
export interface Aim {
  readonly what: string;
  readonly figure: number;
  /** The figure is to stay under it; null for what is only told. */
  readonly below: number | null;
  /** Empty for a ratio. */
  readonly unit: '' | ' s' | ' kB' | ' MB' | ' GB';
}

const WIDTH = 84;

/** One line for each figure, met or missed where there is an aim. */
export function aimsTable(aims: readonly Aim[]): string {
  const head = `${'What'.padEnd(WIDTH)}${'measured'.padStart(12)}${'aim'.padStart(12)}`;
  const lines = aims.map(({ what, figure, below, unit }) => {
    const aim = below === null ? '' : `< ${below}${unit}`;
    const verdict = below === null ? '' : figure < below ? 'met' : 'MISSED';
    return `${what.padEnd(WIDTH)}${written(figure, unit).padStart(12)}${aim.padStart(12)}  ${verdict}`.trimEnd();
  });
  const judged = aims.filter(({ below }) => below !== null);
  const met = judged.filter(({ figure, below }) => below !== null && figure < below);
  return [head, ...lines, `${met.length} of ${judged.length} aims met`].join('\n');
}

function written(figure: number, unit: Aim['unit']): string {
  return `${figure.toFixed(unit === ' kB' || unit === ' MB' ? 0 : unit === ' s' ? 2 : 3)}${unit}`;
}
