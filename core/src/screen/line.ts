/** What is a line of text on paper or a terminal? Its words, and what kind of line it is. */
export type Line = {
  readonly text: string;
  /** What kind of line it is, so that a terminal or a page can set it apart without reading the words. */
  readonly tone: 'title' | 'heading' | 'next' | 'body' | 'quiet' | 'stop' | 'ask' | 'note';
};

export const line = (text: string, tone: Line['tone'] = 'body'): Line => ({ text, tone });
export const BLANK = line('');

/** A section under its heading; nothing where there is nothing in it. */
export const section = (title: string, lines: readonly Line[]): readonly Line[] =>
  lines.length === 0 ? [] : [line(title, 'heading'), ...lines, BLANK];
