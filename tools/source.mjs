// @ts-check
/**
 * What in this file is code, what is comment, what is text between quotes?
 * Enough of a scanner for the checks: a forbidden call in a comment is none, an import in a string is none.
 */

/** A `/` after one of these opens a regular expression; after anything else it divides. */
const BEFORE_PATTERN =
  /(?:^|[(,=:[!&|?{};+\-*%<>~^]|\b(?:return|typeof|case|in|of|do|else|void|delete|throw|await|yield))\s*$/;
const TOKEN = /\/\/[^\n]*|\/\*[\s\S]*?\*\/|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|[`{}/]/g;
const PATTERN = /\/(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\[\n])+\/[a-z]*/y;
const TEMPLATE_PIECE = /(?:\\[\s\S]|\$(?!\{)|[^\\`$])*(`|\$\{)/y;

/** @param {string} text */
const blank = (text) => text.replace(/[^\n]/g, ' ');

/**
 * The same text three times, each as long as the original so that positions agree: `code` without comments and without
 * what is between quotes, `uncommented` with the quotes, `comments` alone.
 * @param {string} text
 */
export function dissect(text) {
  let code = '';
  let comments = '';
  let uncommented = '';
  /** @type {number[]} how many braces are open inside each `${` we are in */
  const holes = [];
  let at = 0;
  /** @param {number} until @param {'code' | 'quoted' | 'comment'} as */
  const take = (until, as) => {
    const piece = text.slice(at, until);
    code += as === 'code' ? piece : as === 'quoted' ? emptied(piece) : blank(piece);
    comments += as === 'comment' ? piece : blank(piece);
    uncommented += as === 'comment' ? blank(piece) : piece;
    at = until;
  };
  /** @param {number} from */
  const takeTemplate = (from) => {
    TEMPLATE_PIECE.lastIndex = from;
    const end = TEMPLATE_PIECE.exec(text);
    take(end === null ? text.length : TEMPLATE_PIECE.lastIndex, 'quoted');
    if (end?.[1] === '${') holes.push(0);
  };
  for (;;) {
    TOKEN.lastIndex = at;
    const found = TOKEN.exec(text);
    if (found === null) break;
    const [token] = found;
    take(found.index, 'code');
    const inside = holes.length - 1;
    if (token.startsWith('//') || token.startsWith('/*')) take(at + token.length, 'comment');
    else if (token === '`') takeTemplate(at + 1);
    else if (token === '}' && holes[inside] === 0) {
      holes.pop();
      takeTemplate(at + 1);
    } else if (token === '{' || token === '}') {
      if (inside >= 0) holes[inside] = (holes[inside] ?? 0) + (token === '{' ? 1 : -1);
      take(at + 1, 'code');
    } else if (token === '/') {
      PATTERN.lastIndex = at;
      const pattern = BEFORE_PATTERN.test(code.slice(-40)) ? PATTERN.exec(text) : null;
      take(at + (pattern?.[0].length ?? 1), pattern === null ? 'code' : 'quoted');
    } else take(at + token.length, 'quoted');
  }
  take(text.length, 'code');
  return { code, comments, uncommented };
}

/** Keeps the marks at both ends, so that one still sees that something was quoted. @param {string} piece */
const emptied = (piece) =>
  piece.length < 2 ? piece : piece[0] + blank(piece.slice(1, -1)) + piece[piece.length - 1];

/**
 * What a file imports or hands on, types too. A specifier that is worked out at run time is null.
 * @param {string} text
 * @returns {(string | null)[]}
 */
export function importsOf(text) {
  const { code, uncommented } = dissect(text);
  const statement =
    /\b(?:import|export)\s[\w\s{},*$]*?\bfrom\s*['"]([^'"\n]+)|\bimport\s*\(?\s*['"]([^'"\n]+)|\bimport\s*\(\s*[^'"\s]/g;
  return [...uncommented.matchAll(statement)]
    .filter((found) => /^(im|ex)port/.test(code.slice(found.index)))
    .map((found) => found[1] ?? found[2] ?? null);
}
