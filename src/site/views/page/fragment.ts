/** What the fragment of an address names, without its `#`. Anybody may have typed it: what is badly encoded is taken as it stands. */
export function fragmentIn(hash: string): string {
  const coded = hash.slice(1);
  try {
    return decodeURIComponent(coded);
  } catch {
    return coded;
  }
}
