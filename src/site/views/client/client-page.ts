/** What the page of the client has: what was charged, what was sent, what came in, what is owed. Of costs and mark-up only what journal.yaml shows the client. */
import { clientAccount, type OpenDue, openDues } from '../../../journal/ledger/client-account.ts';
import { closedStatement, openStatement, type Statement, type StatementLine } from '../../../journal/ledger/statement.ts';
import { sentBy } from '../../../journal/model/sent-by.ts';
import type { ClientAccount, EntryKind, StatementShows } from '../../../journal/model.ts';
import { ENTRY_KINDS } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import { once } from '../../../journal/values/once.ts';
import type { RecordSheet } from '../page/sheet.ts';

/** What was charged of one kind. */
export interface KindCharged {
  readonly kind: EntryKind;
  readonly minutes: number;
  readonly sent: number;
  readonly since: number;
  readonly net: number;
  readonly markUp: number;
  readonly tax: number;
  readonly charged: number;
}

export interface ClientPage {
  readonly account: ClientAccount;
  /** Those that were sent, the first first. */
  readonly sent: readonly Statement[];
  /** What is on none yet. */
  readonly since: Statement;
  readonly kinds: readonly KindCharged[];
  /** What is owed on statements, the oldest first, then what is on none yet. */
  readonly dues: readonly OpenDue[];
  /** What the client is shown of what is not charged. */
  readonly notCharged: readonly StatementLine[];
  readonly shows: readonly StatementShows[];
  /** Tax is charged, or was. */
  readonly taxed: boolean;
}

const pageOf = once((record: JournalRecord): ClientPage => {
  const { journal, day } = record;
  const frozen = sentBy(journal, day);
  const sent = frozen.map((one) => closedStatement(one, record));
  const since = openStatement(record, day);
  const all = [...sent, since];
  return {
    account: clientAccount(record, day),
    sent,
    since,
    kinds: ENTRY_KINDS.flatMap((kind) => kindCharged(kind, sent, since)),
    dues: openDues(record, day),
    notCharged: all.flatMap(({ shows, notCharged }) => (shows.includes('not-charged') ? notCharged : [])),
    shows: journal.settings.shows,
    taxed: all.some(({ registered }) => registered),
  };
});

export const clientPage = ({ record }: RecordSheet): ClientPage => pageOf(record);

function kindCharged(kind: EntryKind, sent: readonly Statement[], since: Statement): KindCharged[] {
  const groupsOf = (statements: readonly Statement[]) => statements.flatMap(({ groups }) => groups.filter((group) => group.kind === kind));
  const all = groupsOf([...sent, since]);
  if (all.length === 0) return [];
  const sum = (of: (one: (typeof all)[number]) => number, groups = all): number => groups.reduce((so, one) => so + of(one), 0);
  return [
    {
      kind,
      minutes: sum((one) => one.sum.minutes),
      sent: sum((one) => one.sum.charged, groupsOf(sent)),
      since: sum((one) => one.sum.charged, groupsOf([since])),
      net: sum((one) => one.sum.net),
      markUp: sum((one) => one.sum.markUp),
      tax: sum((one) => one.sum.tax),
      charged: sum((one) => one.sum.charged),
    },
  ];
}
