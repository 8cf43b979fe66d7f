/** The originality share in figures: of the vehicle and each subsystem, and day by day. */
import type { Originality, Share } from '../../../journal/registers/originality.ts';
import { registerAtAddress } from '../../addresses.ts';
import { shareBar } from '../charts/bar.ts';
import { shownDates } from '../frame/shown-dates.ts';
import { html, type Piece } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';
import type { ShareOnDay } from './originality-charts.ts';

/** The share of the vehicle or of a subsystem, now and as found. */
interface ShareRow {
  readonly name: Piece;
  readonly share: Share;
  readonly found: Share | undefined;
}

/** Both numbers of a share, unweighted and weighted, and what they come to. */
function shareColumns<Row>({ figures }: Sheet, of: (row: Row) => Share): readonly Column<Row>[] {
  return [
    { head: 'Originals in place', set: 'num', cell: (row) => of(row).fitted },
    { head: 'of pieces', set: 'num', cell: (row) => of(row).places },
    { head: 'Weight', set: 'num', cell: (row) => figures.quantity(of(row).originals) },
    { head: 'of weight', set: 'num', cell: (row) => figures.quantity(of(row).of) },
    { head: 'Share', set: 'num', cell: (row) => percent(figures, of(row)) },
  ];
}

const percent = (figures: Sheet['figures'], share: Share | undefined): string =>
  share?.share ? figures.share(share.share.valueOf(), 1) : '';

export function originalityTable(sheet: Sheet, now: Originality, found: Originality): SetTable {
  const bar = ({ share }: ShareRow) => shareBar(share.originals.valueOf(), share.of.valueOf());
  const before = (row: ShareRow) => percent(sheet.figures, row.found);
  const subsystems = [...now.bySubsystem].map(([id, share]) => ({
    name: linked(sheet.subsystemName(id), `#${id}`),
    share,
    found: found.bySubsystem.get(id),
  }));
  const whole = { name: 'The vehicle', share: now.overall, found: found.overall };
  return setTable<ShareRow, ShareRow>({
    label: 'Originality share',
    set: 'account shares',
    columns: [
      { head: 'Subsystem', names: true, cell: ({ name }) => name },
      ...shareColumns<ShareRow>(sheet, ({ share }) => share).map((column) => ({ ...column, sum: column.cell })),
      { head: 'Bar', unseen: true, bare: true, cell: bar, sum: bar },
      { head: 'As found', set: 'num', cell: before, sum: before },
    ],
    groups: rows<ShareRow, ShareRow>(subsystems.filter(({ share }) => share.places > 0)),
    foot: [{ words: whole.name, sum: whole }],
  });
}

/** The figures that the drawing over time is made of, a day a line. */
export function sharesByDay(sheet: RecordSheet, days: readonly ShareOnDay[]): SetTable {
  const shown = new Set(shownDates(sheet.record).map(({ date }) => date));
  return setTable<ShareOnDay>({
    label: 'Originality share by day',
    columns: [
      {
        head: 'Day',
        names: true,
        set: 'date',
        cell: ({ originality: { date }, asFound }) =>
          html`${linked(sheet.figures.shortDate(date), !asFound && shown.has(date) ? sheet.link(registerAtAddress(date)) : null)}${asFound && ', as found'}`,
      },
      ...shareColumns<ShareOnDay>(sheet, ({ originality }) => originality.overall),
      { head: 'Reached', cell: ({ milestones }) => milestones.join(', ') },
    ],
    groups: rows(days),
  });
}
