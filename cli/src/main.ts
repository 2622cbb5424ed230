/**
 * What can be asked on the command line? One verb a file; a verb's own code is loaded when it is called.
 * Exit code 0: done. 1: a problem stops the order. 2: bad input, said on the error stream, and nothing else happened.
 */
import { readFileSync } from 'node:fs';
import { Command } from 'commander';
import { BAD_INPUT, Refused, refusalLines } from './fail.ts';
import { addVerbs } from './verbs.ts';

const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));

function program(): Command {
  const root = new Command('feedwright')
    .description(
      'Turns an order for tube feeding and local policy into what to pour, programme, check and flush, and when.',
    )
    .version(version)
    .showHelpAfterError('Try: feedwright help')
    .exitOverride((stop) => {
      throw stop;
    });
  addVerbs(root);
  for (const verb of root.commands) verb.exitOverride();
  return root;
}

/** Commander's own stops: help and version end well, the rest is bad input and has been said already. */
const stopCode = (problem: unknown): number | null => {
  const stop = problem as { code?: string; exitCode?: number };
  if (typeof stop.code !== 'string' || !stop.code.startsWith('commander.')) return null;
  return stop.exitCode === 0 ? 0 : BAD_INPUT;
};

/** A reader that stops reading (`| head`) is no failure. */
process.stdout.on('error', (problem: NodeJS.ErrnoException) => {
  if (problem.code === 'EPIPE') process.exit(0);
  throw problem;
});

try {
  await program().parseAsync();
} catch (problem) {
  const code = stopCode(problem);
  if (code !== null) process.exitCode = code;
  else if (problem instanceof Refused) {
    const { ENGLISH } = await import('@feedwright/core/screen/english/english');
    process.stderr.write(`${refusalLines(problem, ENGLISH).join('\n')}\n`);
    process.exitCode = BAD_INPUT;
  } else throw problem;
}
