/** statements/*.yaml → the statements that were closed, by number. */
import { startOf } from '../diagnostics/diagnostic.ts';
import type { FrozenLine, FrozenStatement, SentWith, Settings } from '../model.ts';
import type { StatementFile } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import { formatMoney, readOwnAmount } from '../values/money.ts';

/** An amount of the file, in minor units. */
type AmountAt = (text: string, ...path: (string | number)[]) => number;

const AMOUNTS = ['cost', 'net', 'markUp', 'tax', 'charged'] as const;

/** One that cannot be read is reported and left out. */
export function statementsOf(files: readonly StatementFile[], settings: Settings, out: Reporter): FrozenStatement[] {
  const all = files.flatMap((file) => statementOf(file, settings, out) ?? []).sort((a, b) => a.number - b.number);
  return all.filter((statement, i) => {
    const before = all[i - 1];
    if (before?.number !== statement.number) return true;
    const related = [{ place: before.place, message: 'The other one is here.' }];
    out.report('A820', statement.place, `Another statement has the number ${statement.number}.`, {
      related,
      hint: 'Take one of the files out.',
    });
    return false;
  });
}

function statementOf({ file, value, tree }: StatementFile, settings: Settings, out: Reporter): FrozenStatement | null {
  const before = out.diagnostics.length;
  const amount: AmountAt = (text, ...path) => out.take(readOwnAmount(text, settings), tree.placeOf(path)) ?? 0;
  const lines = value.lines.map(({ says }, i): FrozenLine => {
    const [cost = 0, net = 0, markUp = 0, tax = 0, charged = 0] = AMOUNTS.map((field) =>
      amount(says[field], 'lines', i, field === 'markUp' ? 'mark-up' : field),
    );
    const perHour = says.perHour === null ? null : amount(says.perHour, 'lines', i, 'per-hour');
    return { ...says, cost, net, markUp, tax, charged, perHour };
  });
  const charged = amount(value.charged, 'charged');
  const sentWith = value.sentWith === null ? null : sentWithOf(value.sentWith, amount);
  if (out.diagnostics.length > before) return null;
  const sum = lines.reduce((all, line) => all + line.charged, 0);
  if (sum !== charged || lines.some((line) => line.net + line.markUp + line.tax !== line.charged)) {
    const message = `The statement charges ${formatMoney(charged, settings)}, and its lines make ${formatMoney(sum, settings)}.`;
    out.report('A819', tree.placeOf(['charged']), message, {
      hint: 'Put the file back as it was sent: a statement that was closed is not edited.',
    });
  }
  return { number: value.number, from: value.from, to: value.to, charged, lines, sentWith, place: startOf(file) };
}

function sentWithOf({ shows, registered, ...says }: NonNullable<StatementFile['value']['sentWith']>, amount: AmountAt): SentWith {
  const inside = says.inside.map(({ says: row }, i) => {
    const at = (figure: 'net' | 'tax' | 'gross'): number => amount(row[figure], 'sent-with', 'inside', i, figure);
    return { ...row, net: at('net'), tax: at('tax'), gross: at('gross') };
  });
  const received = says.received.map(({ says: one }, i) => ({ ...one, amount: amount(one.amount, 'sent-with', 'received', i, 'amount') }));
  const at = (figure: 'stated' | 'open' | 'received'): number => amount(says.account[figure], 'sent-with', 'account', figure);
  const sums = { stated: at('stated'), open: at('open'), received: at('received') };
  const account = { ...sums, owed: sums.stated + sums.open - sums.received, since: says.account.since };
  return { head: says.head.map(({ says: line }) => line), registered, shows, inside, received, account };
}
