/** A journal that is served while it is written. */
import { JOURNAL } from '../journal.ts';
import { type Serving, until } from '../started.ts';

export interface Served extends Serving {
  /** The journal lies in `van` of it. */
  readonly cwd: string;
}

export const NOTE = 'van/sessions/2031-03-02-drum.md';
/** What it says at first. */
export const note = JOURNAL[NOTE] ?? '';

/** Waits until the page of the note has this in its HTML. */
export async function showing({ address }: Served, html: string): Promise<void> {
  await until(async () => (await (await fetch(`${address}sessions/2031-03-02-drum.html`)).text()).includes(html));
}
