// As many pages as a record has with nothing on them: what Astro itself costs.
import { defineConfig } from 'astro/config';
import { measuredSite } from '../astro-site.mjs';

export default defineConfig(measuredSite(import.meta.dirname));
