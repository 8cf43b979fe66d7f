#!/usr/bin/env node
// Starts the program under a Node that can run it: this one, or the one that comes with the packages.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import module from 'node:module';
import { constants } from 'node:os';
import { fileURLToPath } from 'node:url';

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
const able = major > 22 || (major === 22 && minor >= 18);

// A build makes many short-lived strings. Where they may pile up before they are cleared away, V8 takes a few hundred
// megabytes more for it and is no faster. The limit can only be set as Node starts, so this process becomes that one.
const TIGHT = '--max-semi-space-size=16';
if (able && process.argv[2] === 'build' && process.execve && !process.execArgv.includes(TIGHT)) {
  process.removeAllListeners('warning');
  process.execve(process.execPath, [process.execPath, ...process.execArgv, TIGHT, ...process.argv.slice(1)], process.env);
}

if (able) {
  // Node says once per run that it reads TypeScript by taking the types out; that is no news to anyone here.
  process.removeAllListeners('warning');
  // What it read and compiled last time is kept, which halves the time to start.
  const packages = fileURLToPath(new URL('../../node_modules', import.meta.url));
  const installed = existsSync(packages);
  if (installed) {
    const code = `${process.env.ASFOUND_CACHE || `${packages}/.cache/asfound`}/code`;
    module.enableCompileCache(code);
    // Its threads look for it here.
    process.env.NODE_COMPILE_CACHE ??= code;
  }
  const program = await import('./main.ts').catch((error) => {
    if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
    const [, name = 'a package'] = /package '([^']+)'/.exec(error.message) ?? [];
    const lacks = installed ? `${name} is missing from its packages` : 'its packages are not installed';
    process.stderr.write(`This cannot run: ${lacks}. Run \`npm install\` in ${fileURLToPath(new URL('../..', import.meta.url))} first.\n`);
  });
  process.exitCode = program === undefined ? 70 : await program.main();
} else {
  const node = fileURLToPath(new URL('../../node_modules/node/bin/node', import.meta.url));
  if (!existsSync(node)) {
    process.stderr.write(`This needs Node 22.18 or newer; this is ${process.versions.node}. Run \`npm install\` first: it brings one.\n`);
    process.exitCode = 70;
  } else {
    const child = spawn(node, [fileURLToPath(import.meta.url), ...process.argv.slice(2)], { stdio: 'inherit' });
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
    child.on('exit', (code, signal) => {
      process.exitCode = signal === null ? (code ?? 70) : 128 + constants.signals[signal];
    });
  }
}
