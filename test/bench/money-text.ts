/** Writes minor units as the amount a note carries: 4860 is `48.60`. */
export function pounds(minor: number): string {
  return `${Math.floor(minor / 100)}.${String(minor % 100).padStart(2, '0')}`;
}
