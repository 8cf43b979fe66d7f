/**
 * Works through a list with a few under way at any time, so that memory does not grow with the list.
 *
 * @param items what to work on
 * @param most how many at once, from 1
 * @param work done for each; when one rejects, no further one begins and the rejection is passed on
 * @returns results in the order of the items
 */
export async function eachOf<T, R>(items: readonly T[], most: number, work: (item: T) => Promise<R>): Promise<R[]> {
  const results: R[] = [];
  const left = items.entries();
  let failed = false;
  const lane = async (): Promise<void> => {
    for (const [index, item] of left) {
      if (failed) return;
      results[index] = await work(item).catch((error: unknown) => {
        failed = true;
        throw error;
      });
    }
  };
  await Promise.all(Array.from({ length: Math.max(1, most) }, lane));
  return results;
}
