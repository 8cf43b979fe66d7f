/** One turn of the bench in a process of its own, so that it is charged with nothing that another held: `TURN FOLDER HOW FIGURES`, in JSON. */
import { mkdir, writeFile } from 'node:fs/promises';
import { type How, measureTurn, type Turn } from './parts.ts';

const [turn = '', folder = '', how = '', figures = ''] = process.argv.slice(2);
await mkdir(folder, { recursive: true });
const aims = await measureTurn(JSON.parse(turn) as Turn, folder, JSON.parse(how) as How);
await writeFile(figures, JSON.stringify(aims));
