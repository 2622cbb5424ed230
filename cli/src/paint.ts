/** How do lines look on a terminal? Weight and outline before colour, and colour only where there is a terminal. */
import type { Line } from '@feedwright/core/screen/line';

const CODES: Readonly<Record<Line['tone'], readonly [string, string]>> = {
  title: ['\x1b[1m', '\x1b[22m'],
  heading: ['\x1b[1m', '\x1b[22m'],
  next: ['\x1b[1;7m', '\x1b[22;27m'],
  body: ['', ''],
  quiet: ['\x1b[2m', '\x1b[22m'],
  stop: ['\x1b[1;31m', '\x1b[22;39m'],
  ask: ['\x1b[1;33m', '\x1b[22;39m'],
  note: ['', ''],
};

export type Surface = { readonly isTTY?: boolean };

/** https://no-color.org: any value of NO_COLOR turns colour off. */
export const coloured = (surface: Surface, environment: NodeJS.ProcessEnv): boolean =>
  surface.isTTY === true && (environment.NO_COLOR ?? '') === '' && environment.TERM !== 'dumb';

export function paint(line: Line, inColour: boolean): string {
  const [on, off] = inColour ? CODES[line.tone] : ['', ''];
  return line.text === '' ? '' : `${on}${line.text}${off}`;
}
