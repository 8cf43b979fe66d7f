/** What a note says of money from the client, and of what the vehicle is worth. */
import type { Received, Valuation } from '../model.ts';
import type { NoteFields } from '../read/journal-source.ts';
import { readMoney } from '../values/money.ts';
import { believed, given } from './believed.ts';
import { paperNamed } from './media.ts';
import type { NoteAtHand } from './session.ts';

export function receivedOf(list: NoteFields['received'], context: NoteAtHand): Received[] {
  const { currency, currencyDigits } = context.catalogues.settings;
  return believed(list, ({ says, place, placeOf }) => {
    const money = context.out.take(readMoney(says.amount, currency, currencyDigits), placeOf('amount'));
    const paper = given(says.paper, (name) => paperNamed(name, context, placeOf('paper')));
    if (money === null) return null;
    if (money.minor === 0) {
      context.out.report('A308', placeOf('amount'), 'Nothing was received.', { hint: 'Leave the entry out.' });
      return null;
    }
    return { from: says.from, for: says.for, amount: money.minor, foreign: money.foreign, paper, place };
  });
}

export function valuedOf(list: NoteFields['valued'], context: NoteAtHand): Valuation[] {
  return believed(list, ({ says, place, placeOf }) => {
    const part = says.of === 'vehicle' ? null : context.names.part(says.of, placeOf('of'));
    const value = context.names.money(says.value, placeOf('value'));
    const paper = given(says.paper, (name) => paperNamed(name, context, placeOf('paper')));
    if (value === null || (part === null && says.of !== 'vehicle')) return null;
    if (value < 0) {
      context.out.report('A808', placeOf('value'), 'A value is not negative.', { hint: 'Write it without the minus.' });
      return null;
    }
    return { of: part?.id ?? null, value, basis: says.basis, by: says.by, paper, place };
  });
}
