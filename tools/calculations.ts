/**
 * Writes what is made from the calculations' declarations: docs/calculations.md, and in docs/sources.md the sections
 * “Equations” and “Worked examples”. `node tools/calculations.ts`; a test says when they are out of date.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { EXAMPLE_SOURCES } from '@feedwright/core/reckon/printed-examples';
import { calculationsPage, equationSources } from '@feedwright/core/screen/calculations/page';

const ROOT = join(import.meta.dirname, '..');
export const PAGE = join(ROOT, 'docs/calculations.md');
export const SOURCES = join(ROOT, 'docs/sources.md');

const exampleSources = (): string =>
  [
    '| id | source |',
    '| --- | --- |',
    ...Object.entries(EXAMPLE_SOURCES).map(([id, cite]) => `| ${id} | ${cite.replaceAll('|', '\\|')} |`),
  ].join('\n');

/** The text with one section's body replaced; the heading stays. */
function withSection(text: string, heading: string, body: string): string {
  const [before, after] = text.split(`## ${heading}\n`);
  if (before === undefined || after === undefined)
    throw new Error(`docs/sources.md has no section ${heading}`);
  const next = after.search(/^## /m);
  return `${before}## ${heading}\n\n${body}\n${next < 0 ? '' : `\n${after.slice(next)}`}`;
}

/** docs/sources.md as it should be, from what it is. */
export const sourcesWith = (text: string): string =>
  withSection(
    withSection(
      text,
      'Equations',
      `Written by \`node tools/calculations.ts\` from the calculations' declarations.\n\n${equationSources()}`,
    ),
    'Worked examples',
    `Every printed example that is right comes out as printed; a wrong printed answer is never reproduced. The examples stand in core/test/reckon/examples.\n\n${exampleSources()}`,
  );

export const page = (): string => calculationsPage();

if (import.meta.main) {
  writeFileSync(PAGE, page());
  writeFileSync(SOURCES, sourcesWith(readFileSync(SOURCES, 'utf8')));
}
