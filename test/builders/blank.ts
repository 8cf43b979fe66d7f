/** Entries as the schema gives them out when a note says only what it must: what a test does not speak of is as if absent. */
import { type EntryOf, type SessionSource, sessionSchema } from '../../src/journal/schema/session.ts';

type Lists = { [Field in keyof SessionSource]: EntryOf<Field> extends never ? never : Field }[keyof SessionSource];

/** @param written the fields that the entry cannot do without, as texts */
export function blankEntry<Field extends Lists>(field: Field, written: Readonly<Record<string, string>>): EntryOf<Field> {
  const { [field]: list } = sessionSchema.parse({ date: '2031-01-01', title: 'work', [field]: [written] });
  return (list as EntryOf<Field>[])[0] as EntryOf<Field>;
}

/** A session with nothing recorded in it. */
export function blankSession(): Omit<SessionSource, 'bought'> {
  const { bought, ...session } = sessionSchema.parse({ date: '2031-01-01', title: 'work' });
  return session;
}
