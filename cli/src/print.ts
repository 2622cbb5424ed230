/** How does a verb answer? Lines with their tone for people, JSON for programs; only on the output, only at the end. */
import type { Line } from '@feedwright/core/screen/line';
import { coloured, paint } from './paint.ts';

export function printLines(lines: readonly Line[]): void {
  const inColour = coloured(process.stdout, process.env);
  process.stdout.write(`${lines.map((line) => paint(line, inColour)).join('\n')}\n`);
}

export const printJson = (value: unknown): void => {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
};

export const plain = (text: string, tone: Line['tone'] = 'body'): Line => ({ text, tone });

/** Rows as columns of equal width; the last column runs on. */
export function columns(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows.map((row) =>
    row
      .map((cell, column) => (column === row.length - 1 ? cell : cell.padEnd(widths[column] ?? 0)))
      .join('  ')
      .trimEnd(),
  );
}
