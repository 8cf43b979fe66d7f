/** What was aimed at, and what came of it. */
export interface Aim {
  readonly what: string;
  /** Null where it was sought and not found, which is neither met nor missed. */
  readonly figure: number | null;
  /** The figure is to stay under it; null for what is only told. */
  readonly below: number | null;
  /** Empty for a ratio. */
  readonly unit: '' | ' s' | ' ms' | ' kB' | ' MB' | ' GB';
}

const WIDTH = 88;

/** One line for each figure, met or missed where there is an aim. */
export function aimsTable(aims: readonly Aim[]): string {
  const head = `${'What'.padEnd(WIDTH)}${'measured'.padStart(12)}${'aim'.padStart(12)}`;
  const lines = aims.map((one) => {
    const { what, figure, below, unit } = one;
    const aim = below === null ? '' : `< ${below}${unit}`;
    return `${what.padEnd(WIDTH)}${written(figure, unit).padStart(12)}${aim.padStart(12)}  ${verdict(one)}`.trimEnd();
  });
  const verdicts = aims.map(verdict).filter((one) => one !== '');
  const met = verdicts.filter((one) => one === 'met');
  return [head, ...lines, `${met.length} of ${verdicts.length} aims met`].join('\n');
}

function verdict({ figure, below }: Aim): '' | 'met' | 'MISSED' {
  if (below === null || figure === null) return '';
  return figure < below ? 'met' : 'MISSED';
}

function written(figure: number | null, unit: Aim['unit']): string {
  if (figure === null) return 'not measured';
  return `${figure.toFixed(unit === ' kB' || unit === ' MB' ? 0 : unit === ' s' || unit === ' ms' ? 2 : 3)}${unit}`;
}
