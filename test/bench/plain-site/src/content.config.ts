import { defineCollection } from 'astro/content/config';
import { glob } from 'astro/loaders';

const base = process.env.BENCH_NOTES;
if (base === undefined) throw new Error('BENCH_NOTES names the folder of notes.');

export const collections = {
  notes: defineCollection({ loader: glob({ base, pattern: '**/*.md' }) }),
};
