import type { Foreign } from '../../../journal/model.ts';
import { currencyDigits, formatMoney } from '../../../journal/values/money.ts';
import type { Sheet } from '../page/sheet.ts';

/** What stands on a bill in another currency, and the rate on the note: `€62.50 on the bill; one EUR at 0.8571 GBP`. */
export function foreignWords(sheet: Sheet, { currency, amount, rate }: Foreign): string {
  const { locale, currency: own } = sheet.settings;
  return `${formatMoney(amount, { locale, currency, currencyDigits: currencyDigits(currency) ?? 2 })} on the bill; one ${currency} at ${rate} ${own}`;
}
