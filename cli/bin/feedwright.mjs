#!/usr/bin/env node
/**
 * The command, from a link or by its path, with no build before it. It answers --version by itself; for the rest it
 * makes sure of a Node that can run the sources, and lets that remember what it compiled.
 */
import { readFileSync } from 'node:fs';

const OLDEST_NODE = 24;
const [asked] = process.argv.slice(2);

if (asked === '--version' || asked === '-V') {
  const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
  console.log(version);
} else if (Number.parseInt(process.versions.node, 10) < OLDEST_NODE) {
  await runOnOurs();
} else {
  const { enableCompileCache } = await import('node:module');
  const { fileURLToPath } = await import('node:url');
  enableCompileCache?.(fileURLToPath(new URL('../../node_modules/.cache/feedwright', import.meta.url)));
  await import('../src/main.ts');
}

/** The Node that came along with the packages takes over; without one, a word on what to install. */
async function runOnOurs() {
  const { spawnSync } = await import('node:child_process');
  const { existsSync } = await import('node:fs');
  const { fileURLToPath } = await import('node:url');
  const windows = process.platform === 'win32';
  const ours = fileURLToPath(
    new URL(
      `../../node_modules/node-${windows ? 'win' : process.platform}-${process.arch}/bin/node${windows ? '.exe' : ''}`,
      import.meta.url,
    ),
  );
  if (!existsSync(ours)) {
    console.error(
      `feedwright needs Node ${OLDEST_NODE} or later; this is ${process.version}. Install it, or run "npm ci" where feedwright is.`,
    );
    process.exit(2);
  }
  const { status } = spawnSync(ours, process.argv.slice(1), { stdio: 'inherit' });
  process.exitCode = status ?? 1;
}
