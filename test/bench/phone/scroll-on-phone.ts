/** A page scrolled by a finger's gesture: the main thread's work for each frame, from the browser's own trace. */
import type { Browser, CDPSession, Page } from 'playwright-core';
import { phoneContext } from './open-on-phone.ts';

export interface Scrolled {
  readonly frames: number;
  /** Milliseconds of the processor on the main thread: of the middle frame, of one that only a hundredth is over, of the heaviest. */
  readonly usual: number;
  readonly heavy: number;
  readonly heaviest: number;
  /** Share of frames that came over 25 ms after the one before; other programs of the machine count in it. */
  readonly late: number;
}

/** One event of a trace, times in microseconds. */
interface Traced {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  /** Of the thread's own time. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** What the main thread does to put up a frame; none of them lies in another. */
const WORK = new Set(['UpdateLayoutTree', 'Layout', 'PrePaint', 'Paint', 'Layerize', 'Commit', 'FunctionCall', 'EventDispatch']);
/** Pixels of the page, and in a second: a quick thumb. */
const FAR = 12_000;
const SPEED = 3000;
const LATE_MS = 25;

export async function scrollOnPhone(browser: Browser, address: string): Promise<Scrolled> {
  const context = await phoneContext(browser);
  const tab = await context.newPage();
  await tab.goto(address, { waitUntil: 'load' });
  const protocol = await context.newCDPSession(tab);
  const intervals = await countIntervals(tab);
  const events = await traced(protocol, async () => {
    await protocol.send('Input.synthesizeScrollGesture', { x: 195, y: 600, yDistance: -FAR, speed: SPEED, gestureSourceType: 'touch' });
  });
  const times = await intervals();
  await context.close();
  const work = workOfFrames(events).sort((a, b) => a - b);
  const at = (share: number): number => work[Math.min(work.length - 1, Math.floor(work.length * share))] ?? Number.NaN;
  const late = times.filter((ms) => ms > LATE_MS).length / times.length;
  return { frames: work.length, usual: at(0.5), heavy: at(0.99), heaviest: at(1), late };
}

/** @returns asks for the time between frames since now */
async function countIntervals(tab: Page): Promise<() => Promise<number[]>> {
  await tab.evaluate(() => {
    const times: number[] = [];
    let last = performance.now();
    const next = (now: number): void => {
      times.push(now - last);
      last = now;
      requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
    Object.assign(globalThis, { frameTimes: times });
  });
  return () => tab.evaluate(() => (globalThis as unknown as { frameTimes: number[] }).frameTimes);
}

async function traced(protocol: CDPSession, doing: () => Promise<void>): Promise<Traced[]> {
  const events: Traced[] = [];
  protocol.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as Traced[])));
  const ended = new Promise<void>((done) => protocol.once('Tracing.tracingComplete', () => done()));
  const categories = 'devtools.timeline,disabled-by-default-devtools.timeline,__metadata';
  await protocol.send('Tracing.start', { categories, transferMode: 'ReportEvents' });
  await doing();
  await protocol.send('Tracing.end');
  await ended;
  return events;
}

/** Milliseconds of work up to each frame's commit, on the main thread that did most. */
function workOfFrames(events: readonly Traced[]): number[] {
  const threads = Map.groupBy(
    events.filter(({ name, ph }) => WORK.has(name) && ph === 'X'),
    ({ pid, tid }) => `${pid} ${tid}`,
  );
  const [main = []] = [...threads.values()].sort((a, b) => b.length - a.length);
  const frames: number[] = [];
  let sum = 0;
  for (const { name, tdur, dur } of main.sort((a, b) => a.ts - b.ts)) {
    sum += (tdur ?? dur ?? 0) / 1000;
    if (name !== 'Commit') continue;
    frames.push(sum);
    sum = 0;
  }
  return frames;
}
