/**
 * Dates, money and quantities as a reader of the journal's locale expects them. Formatters are made
 * once a locale: a large journal prints some hundred thousand figures.
 */
import type Fraction from 'fraction.js';
import type { IsoDate, Minor, Settings } from '../../../journal/model.ts';
import { formatMinutes, formatMoney, MINUS, minorToDecimal } from '../../../journal/values/money.ts';
import { keptIn, once } from '../../../journal/values/once.ts';

/** How one journal writes its figures. */
export interface Figures {
  /** `14 September 2024` */
  date(date: IsoDate): string;
  /** `14 Sep 2024` */
  shortDate(date: IsoDate): string;
  /** `Sat 14 Sep`: within a list that names its month and year */
  day(date: IsoDate): string;
  /** `September 2024` of `2024-09` */
  month(month: string): string;
  /** `Sep 24` of `2024-09`, for the head of a column */
  shortMonth(month: string): string;
  /** Whether the journal has a currency. Without one no page, column or nought speaks of money. */
  readonly hasMoney: boolean;
  /** `£1,204.50` */
  money(minor: Minor): string;
  /** `1,204.50`: where the table names its currency */
  amount(minor: Minor): string;
  /** `12 h 30 min` */
  time(minutes: number): string;
  /** `12:30`: hours and minutes, for columns that add up */
  hours(minutes: number): string;
  /** `62 %` of a share from 0 to 1 */
  share(part: number, whole: number): string;
  /** An exact quantity in at most three decimals: `1.25` */
  quantity(value: Fraction): string;
  /** A number up the side of a drawing, to six significant digits: `0.8755` */
  plain(n: number): string;
  /** A whole number with its thousands marked */
  whole(n: number): string;
}

/** The figures of a journal. */
export const figuresOf: (settings: Settings) => Figures = once(makeFigures);

function makeFigures(settings: Settings): Figures {
  const { locale, currencyDigits: digits } = settings;
  const dated = (options: Intl.DateTimeFormatOptions) => {
    const format = new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' });
    return remembering((text: string) => format.format(new Date(`${text.length === 7 ? `${text}-01` : text}T00:00Z`)));
  };
  const amounts = new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits });
  const quantities = new Intl.NumberFormat(locale, { maximumFractionDigits: 3 });
  const plain = new Intl.NumberFormat(locale, { maximumSignificantDigits: 6 });
  const shares = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
  return {
    date: dated({ day: 'numeric', month: 'long', year: 'numeric' }),
    shortDate: dated({ day: 'numeric', month: 'short', year: 'numeric' }),
    day: dated({ weekday: 'short', day: 'numeric', month: 'short' }),
    month: dated({ month: 'long', year: 'numeric' }),
    shortMonth: dated({ month: 'short', year: '2-digit' }),
    hasMoney: settings.currency !== null,
    money: (minor) => formatMoney(minor, settings),
    amount: (minor) => amounts.format(minorToDecimal(minor, digits) as `${number}`).replace('-', MINUS),
    time: formatMinutes,
    hours: (minutes) =>
      `${minutes < 0 ? MINUS : ''}${quantities.format(Math.floor(Math.abs(minutes) / 60))}:${String(Math.abs(minutes) % 60).padStart(2, '0')}`,
    share: (part, whole) => (whole === 0 ? '–' : shares.format(part / whole)),
    quantity: (value) => quantities.format(value.valueOf()).replace('-', MINUS),
    plain: (n) => plain.format(n).replace('-', MINUS),
    whole: (n) => quantities.format(n),
  };
}

function remembering(format: (text: string) => string): (text: string) => string {
  const known = new Map<string, string>();
  return (text) => keptIn(known, text, () => format(text));
}
