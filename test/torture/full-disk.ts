/** Commands on a small file system that really is full, where one can be made. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { again, trespassOf, WRITING } from './commands.ts';
import { OWN_FAULT, stateOf } from './stand.ts';
import type { Outcome, Part, Setting } from './torture.ts';

const ROOM_KB = [0, 4, 64, 512];

export const fullDisk: Part = {
  name: 'full-disk',
  shows: 'the same on a file system in memory with next to no room',
  usual: WRITING.length * ROOM_KB.length,
  run: async ({ folder, amount, isOver, progress }): Promise<Outcome> => {
    const disk = join(folder, 'disk');
    mkdirSync(disk);
    if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=24m', 'tmpfs', disk]).status !== 0) {
      return { counts: { 'no file system can be mounted here': 1 }, failures: [] };
    }
    try {
      return await onDisk(disk, { amount, isOver, progress });
    } finally {
      spawnSync('umount', [disk]);
    }
  },
};

async function onDisk(disk: string, { amount, isOver, progress }: Pick<Setting, 'amount' | 'isOver' | 'progress'>): Promise<Outcome> {
  const counts: Record<string, number> = {};
  const failures: string[] = [];
  let tried = 0;
  for (const writing of WRITING) {
    for (const room of ROOM_KB) {
      if (tried >= amount || isOver()) return { counts, failures };
      tried += 1;
      const cwd = join(disk, `${writing.name}-${room}`);
      mkdirSync(cwd);
      await writing.prepare(cwd);
      const before = stateOf(cwd, (path) => writing.writes.test(path));
      fill(join(disk, 'ballast'), room);
      const { code, said } = await writing.run(cwd).ended;
      const fault = OWN_FAULT.test(said) || (code !== 0 && code !== 3) ? `it ended with ${code}: ${said.trim().split('\n').at(-1)}` : null;
      writeFileSync(join(disk, 'ballast'), '');
      const found = fault ?? trespassOf(before, cwd, writing) ?? writing.check(cwd) ?? (await again(cwd, writing));
      if (found !== null) failures.push(`${writing.name} with ${room} kB left: ${found}`);
      counts[writing.name] = (counts[writing.name] ?? 0) + 1;
      spawnSync('rm', ['-rf', cwd]);
      progress(`${writing.name}, ${room} kB`);
    }
  }
  return { counts, failures };
}

/** Leaves so many kilobytes. */
function fill(file: string, room: number): void {
  writeFileSync(file, '');
  const { bavail, bsize } = statfsSync(file);
  writeFileSync(file, Buffer.alloc(Math.max(0, bavail * bsize - room * 1024)));
}
