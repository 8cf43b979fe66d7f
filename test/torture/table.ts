/** What was tried and what did not hold, as one table. */

export interface Row {
  readonly name: string;
  readonly counts: Readonly<Record<string, number>>;
  readonly failures: readonly string[];
  readonly seconds: number;
}

export function tableOf(rows: readonly Row[]): string {
  const cells = rows.map(({ name, counts, failures, seconds }) => [
    name,
    Object.entries(counts)
      .map(([what, count]) => `${what} ${count}`)
      .join(', '),
    String(failures.length),
    String(seconds),
  ]);
  const all = [['part', 'tried', 'failed', 'seconds'], ['---', '---', '---:', '---:'], ...cells];
  return all.map((row) => `| ${row.join(' | ')} |`).join('\n');
}
