import type { FrozenStatement, IsoDate, Journal } from '../model.ts';

/**
 * The statements of a journal as it stood at the end of a day: each from its last day on, or from the newest note on where it
 * was closed for longer than notes tell.
 */
export function sentBy({ statements, sessions }: Pick<Journal, 'statements' | 'sessions'>, at: IsoDate): readonly FrozenStatement[] {
  const newest = sessions.at(-1)?.date ?? at;
  return statements.filter(({ to }) => to <= at || newest <= at);
}
