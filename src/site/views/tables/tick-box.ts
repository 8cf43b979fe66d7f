import { html } from '../page/html.ts';
import type { Column } from './table.ts';

/** A column for paper: a box to tick when a thing was seen, or bought. */
export const tickBox = <Row, Sum = never>(head: string): Column<Row, Sum> => ({
  head,
  set: 'tick on-paper',
  bare: true,
  cell: () => html`<span class="box"></span>`,
});
