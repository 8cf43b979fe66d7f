/** A title as part of a file name: `Front brakes, nearside` is `front-brakes-nearside`. */
export function slugOf(title: string): string {
  const slug = title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-$/, '');
  return slug === '' ? 'note' : slug;
}
