/** What to type for a time worked that people write in other ways: offered, never taken. */
import { asTyped } from './as-typed.ts';

const CLOCK = String.raw`(\d{1,2})(?:[:.h]?(\d{2}))?\s*([ap])?\.?(?:m\.?)?`;
const RANGE = new RegExp(`^(?:from\\s+)?${CLOCK}\\s*(?:-|to|till|until)\\s*${CLOCK}$`, 'i');
const LENGTH = /^(?:(\d{1,2})[:h]\s*(\d{2})|(\d{1,2})(?:[.,](\d{1,2}))?\s*(?:h|hrs?|hours?)?\.?)$/i;

/** `19:00-21:30` for `7pm to 9:30pm`, `2h30m` for `2h30`, `2:30` and `2.5 hours`; null where it may be anything. */
export function timeMeant(text: string): string | null {
  const written = asTyped(text).replace(/^(\d{1,2}) ?(?:1\/2)(?= ?h)/i, '$1.5');
  const range = RANGE.exec(written);
  if (range) return rangeMeant(range);
  const [all, hours, minutes, whole = '', part] = LENGTH.exec(written) ?? [];
  if (all === undefined) return null;
  if (hours !== undefined) return Number(minutes) > 59 ? null : lengthOf(Number(hours) * 60 + Number(minutes));
  return lengthOf(Number(whole) * 60 + Math.round(Number(`0.${part ?? '0'}`) * 60));
}

/** Half a day is told of one end of a range where the other one says it. */
function rangeMeant([, fromHour = '', fromMinute = '00', fromHalf, toHour = '', toMinute = '00', toHalf]: RegExpExecArray): string | null {
  const [from, to] = [clockOf(fromHour, fromMinute, fromHalf ?? toHalf), clockOf(toHour, toMinute, toHalf)];
  return from === null || to === null || from === to ? null : `${from}-${to}`;
}

function clockOf(hour: string, minute: string, half: string | undefined): string | null {
  const twelve = half !== undefined;
  if (Number(minute) > 59 || Number(hour) > (twelve ? 12 : 23) || (twelve && Number(hour) === 0)) return null;
  const shown = twelve ? (Number(hour) % 12) + (half.toLowerCase() === 'p' ? 12 : 0) : Number(hour);
  return `${String(shown).padStart(2, '0')}:${minute}`;
}

function lengthOf(minutes: number): string | null {
  if (minutes === 0 || minutes > 24 * 60) return null;
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return `${hours === 0 ? '' : `${hours}h`}${rest === 0 ? '' : `${rest}m`}`;
}
