/**
 * What follows from the program alone: its code as Node compiles it, its pages as Astro does. The processes and builds of a run make
 * it once and hand it on, each in a cache folder of its own otherwise. It is made from nothing in every run, and goes with it.
 */
import { existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inject } from 'vitest';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The folder of this run. */
    ofTheProgram: string;
  }
}

export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'asfound-run-'));
  process.env.NODE_COMPILE_CACHE = join(folder, 'code');
  mkdirSync(join(folder, 'edition'));
  project.provide('ofTheProgram', folder);
  return () => rmSync(folder, { recursive: true, force: true });
}

/** Lends a cache folder the pages of the program as they were compiled before; it holds nothing else of another test. */
export function lendPages(cache: string): void {
  const edition = join(cache, 'edition');
  if (existsSync(edition)) return;
  mkdirSync(cache, { recursive: true });
  symlinkSync(join(inject('ofTheProgram'), 'edition'), edition, 'junction');
}
