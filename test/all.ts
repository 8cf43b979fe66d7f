/**
 * `npm test`: every check and every test. The rules of writing and the types are checked while the tests run, and told when
 * they end; what is given on the command line goes to the test runner.
 */
import { spawn } from 'node:child_process';

interface Ended {
  readonly code: number;
  readonly said: string;
}

/** @param aloud what it says is seen as it says it; else it is given back */
function run(command: readonly string[], aloud: boolean): Promise<Ended> {
  const [name = '', ...args] = command;
  return new Promise((resolve, reject) => {
    const child = spawn(name, args, { stdio: aloud ? 'inherit' : ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream?.on('data', (text: Buffer) => (said += text.toString()));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code: code ?? 1, said }));
  });
}

// What takes a second is told first: nobody waits minutes for a rule of writing.
const written = await run(['npm', 'run', '--silent', 'lint'], true);
if (written.code !== 0) process.exit(written.code);
const typed = run(['npm', 'run', '--silent', 'check:types'], false);
const tested = await run(['vitest', 'run', '--config', 'test/vitest.config.ts', ...process.argv.slice(2)], true);
const { code, said } = await typed;
if (code !== 0) process.stdout.write(`\nTypes:\n${said}\n`);
process.exitCode = tested.code || code;
