import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/journal/values/date.ts';
import { byDay, dayLength, readTime } from '../../src/journal/values/time.ts';

const LONDON = 'Europe/London';

function minutes(text: string, date: string, zone = LONDON): number | string {
  const read = readTime(text, date, zone);
  return read.ok ? read.value.minutes : read.code;
}

describe('a length', () => {
  // Source: ISO 8601-1, durations in hours and minutes.
  test.each([
    ['90m', 90],
    ['1h', 60],
    ['1h30m', 90],
    ['PT1H30M', 90],
    ['PT45M', 45],
    ['24h', 1440],
  ])('%s is %i minutes', (text, length) => expect(minutes(text, '2031-03-12')).toBe(length));

  test('as long as the day, which has an hour more where the clocks go back', () => {
    expect(minutes('25h', '2025-10-26')).toBe(1500);
    expect(minutes('24h', '2025-03-30')).toBe('A306');
  });

  test.each(['', 'h', 'PT', '0m', '1.5h', '-30m', 'PT1.5H', 'P1D', '1h 30', '25h', '99999h', '19:10', 'half an hour'])(
    '%j is refused',
    (text) => expect(minutes(text, '2031-03-12')).toBe('A306'),
  );
});

describe('a clock range', () => {
  test.each([
    ['19:10-21:40', 150],
    ['22:30-00:40', 130],
    ['20:00-24:00', 240],
    ['20:00-00:00', 240],
    ['9:05-9:06', 1],
    ['19:10 – 21:40', 150],
  ])('%s is %i minutes', (text, length) => expect(minutes(text, '2031-03-12')).toBe(length));

  test.each(['25:00-26:00', '19:60-20:00', '24:00-25:00', '19:10-19:10', '24:01-02:00'])('%s is on no clock', (text) =>
    expect(minutes(text, '2031-03-12')).toBe('A306'),
  );

  // Source: tz database, Europe/London: 2025-03-30 01:00 to 02:00 does not exist; 2025-10-26 01:00 to 02:00 comes twice.
  test('an hour is lost where the clocks go forward', () => expect(minutes('00:30-02:30', '2025-03-30')).toBe(60));
  test('an hour is won where they go back', () => expect(minutes('00:30-02:30', '2025-10-26')).toBe(180));
  test('over midnight into the change too', () => expect(minutes('23:00-03:00', '2025-03-29')).toBe(180));
  test('a time that comes twice is the first of them, at either end', () => {
    expect(minutes('00:30-01:30', '2025-10-26')).toBe(60);
    expect(minutes('01:30-02:30', '2025-10-26')).toBe(120);
  });
  // Source: ISO 8601-1, time shift behind a time of day; the tz database has London at +01:00, then at +00:00 from 02:00 on.
  test.each([
    ['00:30-01:30+2', 120],
    ['01:30-01:30+2', 60],
    ['01:45-01:15+2', 30],
    ['01:30+2-02:30', 60],
    ['01:30+01:00-01:30+00:00', 60],
    ['01:30Z-02:30Z', 60],
    ['01:30+2-01:45+2', 15],
  ])('the hour that comes twice is told apart: %s is %i minutes', (text, length) => expect(minutes(text, '2025-10-26')).toBe(length));
  test.each([
    ['23:20-01:30+2', '2025-10-25', 190],
    ['23:20-01:30+00:00', '2025-10-25', 190],
    ['23:20-02:30+01:00', '2025-03-29', 130],
    ['23:20-01:30+2', '2025-10-24', 'A306'],
  ])('over midnight it is the end that is of the next day: %s of %s is %s', (text, date, length) =>
    expect(minutes(text, date)).toBe(length),
  );
  test('west of Greenwich too, where an offset looks like the end of a range', () => {
    expect(minutes('00:30-01:30-05:00', '2025-11-02', 'America/New_York')).toBe(120);
    expect(minutes('01:30-04:00-01:30-05:00', '2025-11-02', 'America/New_York')).toBe(60);
  });
  test.each(['12:00+2-13:00', '12:00+05:00-13:00'])('%s is no such time', (text) => expect(minutes(text, '2025-10-26')).toBe('A306'));

  // Independent reference: Temporal's hours in a day.
  test('a day is as long as Temporal says, where the clocks change at midnight too', () => {
    const zones = ['Europe/London', 'America/Santiago', 'Australia/Lord_Howe', 'Asia/Tehran', 'Africa/Cairo', 'Asia/Beirut'];
    const days = changes(zones).map((day) => addDays('2000-01-01', day));
    for (const zone of zones) {
      for (const day of days) {
        const hours = Temporal.PlainDate.from(day).toZonedDateTime(zone).hoursInDay;
        expect(dayLength(day, zone), `${day} ${zone}`).toBe(hours * 60);
      }
    }
  });
  test('what comes after midnight is of the next day, whatever the clocks do', () => {
    const parts = (text: string, date: string) => {
      const read = readTime(text, date, LONDON);
      return read.ok && read.value.span ? byDay(read.value.span, date, LONDON).map((day) => [day.date, day.minutes]) : [];
    };
    expect(parts('22:30-00:40', '2031-03-12')).toEqual([
      ['2031-03-12', 90],
      ['2031-03-13', 40],
    ]);
    expect(parts('20:00-24:00', '2031-03-12')).toEqual([['2031-03-12', 240]]);
    expect(parts('23:00-03:00', '2025-03-29')).toEqual([
      ['2025-03-29', 60],
      ['2025-03-30', 120],
    ]);
  });

  test('a time that the clocks leap over is said to be none', () => {
    expect(minutes('01:30-03:00', '2025-03-30')).toBe('A809');
    expect(minutes('00:30-01:00', '2025-03-30')).toBe('A809');
    expect(minutes('23:00-01:59', '2025-03-29')).toBe('A809');
  });

  // Independent reference: temporal-polyfill, the Temporal proposal of TC39, on the same tz database.
  test('any range passes the minutes that Temporal counts', () => {
    // Zones of half and quarter hours, of a half-hour change, of a change at midnight, and with none.
    const zones = [
      'Europe/London',
      'America/New_York',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
      'America/Santiago',
      'Pacific/Chatham',
      'UTC',
      'Asia/Tehran',
    ];
    const days = fc.oneof(fc.integer({ min: 0, max: 15_000 }), fc.constantFrom(...changes(zones)));
    const clock = fc.integer({ min: 0, max: 1439 });
    fc.assert(
      fc.property(fc.constantFrom(...zones), days, clock, clock, (zone, day, from, to) => {
        fc.pre(from !== to);
        const date = addDays('2000-01-01', day);
        const read = readTime(`${two(from)}-${two(to)}`, date, zone);
        const start = first(date, from, zone);
        const end = first(to > from ? date : addDays(date, 1), to, zone);
        if (start === null || end === null) expect(read).toMatchObject({ ok: false, code: 'A809' });
        else expect(read.ok && read.value).toEqual({ minutes: end - start, span: { start, end } });
      }),
      { numRuns: 400 },
    );
  });
});

function two(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
}

/** The first instant of a wall time by Temporal, in minutes since 1970 UTC; null in a gap. */
function first(date: string, minute: number, zone: string): number | null {
  const wall = Temporal.PlainDateTime.from(`${date}T${two(minute)}`);
  const zoned = wall.toZonedDateTime(zone, { disambiguation: 'earlier' });
  return zoned.toPlainDateTime().equals(wall) ? zoned.epochMilliseconds / 60_000 : null;
}

/** The days since 2000 on which the clocks of any of the zones change, and the days before them. */
function changes(zones: readonly string[]): number[] {
  const origin = Temporal.PlainDate.from('2000-01-01');
  return zones.flatMap((zone) => {
    const days: number[] = [];
    let at: Temporal.ZonedDateTime | null = origin.toZonedDateTime(zone);
    while (days.length < 40) {
      at = at.getTimeZoneTransition('next');
      if (at === null || at.year > 2040) break;
      const day = origin.until(at.toPlainDate(), { largestUnit: 'days' }).days;
      days.push(day - 1, day);
    }
    return days;
  });
}
