import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { IsoDate, PartId, Whereabouts } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { type HandOver, keepingsOf } from '../replay/keepers.ts';

/** A vehicle passes to somebody else, and only what is off it and here can go along or stay. */
export function handOvers(record: JournalRecord): Diagnostic[] {
  return keepingsOf(record.journal).flatMap(({ by }) => (by === null ? [] : [...toItsKeeper(by), ...notToBeNamed(record, by)]));
}

function toItsKeeper({ entry, from }: HandOver): Diagnostic[] {
  if (entry.to !== from) return [];
  const hint = 'Name in `to` who has it from now on; `keeper` in journal.yaml is who had it at first.';
  return [diagnostic('A619', entry.place, `The vehicle is handed over to \`${entry.to}\`, who has it.`, { hint })];
}

function notToBeNamed(record: JournalRecord, { entry, session }: HandOver): Diagnostic[] {
  const both = entry.goes
    .filter((part) => entry.stays.includes(part))
    .map((part) => diagnostic('A620', entry.place, `\`${part}\` goes, and it stays.`, { hint: 'Name it once.' }));
  const named = [...new Set([...entry.goes, ...entry.stays])];
  const wrong = named.flatMap((part) => {
    const because = cannotBeNamed(placesOf(record, part, session.date));
    return because === null ? [] : [notOff(entry, part, because)];
  });
  return [...both, ...wrong];
}

/** Why nothing of a part can go along or stay; null where some of it can. */
function cannotBeNamed(places: readonly Whereabouts[]): string | null {
  if (places.some(({ at }) => ['stores', 'bag', 'out', 'in'].includes(at))) return null;
  return places.some(({ at }) => at === 'fitted') ? 'is on the vehicle, and goes with it' : 'is not here';
}

function notOff(entry: HandOver['entry'], part: PartId, because: string): Diagnostic {
  const hint = 'Under `goes` and `stays` stands what is off the vehicle. Take it out, or record first how it came off or here.';
  return diagnostic('A620', entry.place, `\`${part}\` ${because}.`, { hint });
}

/** Where a part is at the end of a day. */
function placesOf({ history }: JournalRecord, part: PartId, date: IsoDate): readonly Whereabouts[] {
  const stays = history.stays.get(part) ?? [];
  return stays.filter(({ from, to }) => from.date <= date && (to === null || to.date > date)).map(({ where }) => where);
}
