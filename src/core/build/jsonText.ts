import { type Node, type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser';
import { bad, good, type Issue, type Outcome, pathText, type TextPosition } from '../quantity/index.ts';

/** Characters of text that are read at most; a large build is under 100 000. */
export const MAX_TEXT_LENGTH = 1_048_576;
/** Levels of nesting that are read at most; a build has under 12. */
export const MAX_DEPTH = 64;
/** Syntax errors told at most: after a few dozen they are echoes of the first. */
const MAX_SYNTAX_ISSUES = 50;

/** A JSON text that was read, and where in the text each of its values stands. */
export interface JsonText {
  readonly value: unknown;
  /**
   * Where the value at `path` stands (`stacks.rearAxle.items[2].length`, '' for the whole), or the nearest
   * value around it when there is none, as for a field that is missing.
   */
  readonly locate: (path: string) => TextPosition;
  /** The same issues, each with its place in the text; an unknown key is placed at the key. */
  readonly place: (issues: readonly [Issue, ...Issue[]]) => readonly [Issue, ...Issue[]];
}

/**
 * Reads strict JSON (no comments, no trailing commas) and keeps the positions. All errors of syntax and all
 * repeated keys come back together. A byte order mark is skipped; a key `__proto__` is refused, since it could
 * neither be used as a name nor be dropped in silence.
 * @issue too-large — longer than {@link MAX_TEXT_LENGTH} or nested deeper than {@link MAX_DEPTH}
 * @issue not-json, duplicate-name, unknown-key (`__proto__`)
 */
export function readJsonText(text: string): Outcome<JsonText> {
  const positions = positionsIn(text);
  const tooLarge = sizeIssue(text, positions);
  if (tooLarge) return bad(tooLarge);
  const errors: ParseError[] = [];
  // The mark is replaced, not cut, so that offsets stay those of the text.
  const root = parseTree(text.replace(/^\uFEFF/, ' '), errors, { disallowComments: true });
  // One word out of place gives several errors there; the first says it best.
  const firstAtPlace = new Map(errors.toReversed().map((error) => [error.offset, error]));
  const [first, ...rest] = [...firstAtPlace.values()]
    .toReversed()
    .slice(0, MAX_SYNTAX_ISSUES)
    .map((error) => syntaxIssue(error, text, positions));
  if (first) return bad(first, ...rest);
  if (!root) return bad({ code: 'not-json', path: '', reason: 'the text is empty' });
  const places: Places = { values: new Map(), keys: new Map() };
  const issues: Issue[] = [];
  const value = readNode(root, '', places, (issue, offset) =>
    issues.push({ ...issue, at: positions(offset) }),
  );
  const [firstIssue, ...otherIssues] = issues;
  return firstIssue ? bad(firstIssue, ...otherIssues) : good(jsonText(value, places, positions));
}

type Positions = (offset: number) => TextPosition;
interface Places {
  readonly values: Map<string, number>;
  readonly keys: Map<string, number>;
}

function jsonText(value: unknown, places: Places, positions: Positions): JsonText {
  const nearest = (path: string): number => {
    for (let at = path; at !== ''; at = parentPath(at)) {
      const offset = places.values.get(at);
      if (offset !== undefined) return offset;
    }
    return places.values.get('') ?? 0;
  };
  const locate = (path: string): TextPosition => positions(nearest(path));
  const placeOne = (issue: Issue): Issue => ({
    ...issue,
    at: issue.at ?? positions(issueOffset(issue, places, nearest)),
  });
  return {
    value,
    locate,
    place: ([first, ...rest]) => [placeOne(first), ...rest.map(placeOne)],
  };
}

function issueOffset(issue: Issue, places: Places, nearest: (path: string) => number): number {
  if (issue.code !== 'unknown-key') return nearest(issue.path);
  return (
    places.keys.get(fieldPath(issue.path, issue.given)) ?? places.keys.get(issue.path) ?? nearest(issue.path)
  );
}

function fieldPath(parent: string, key: string | number): string {
  if (typeof key === 'number') return `${parent}[${key}]`;
  return parent === '' ? pathText([key]) : `${parent}.${pathText([key])}`;
}

/** A name in quotes may hold a dot; what is cut off in its middle is no known path and is cut again. */
function parentPath(path: string): string {
  return path.slice(0, Math.max(path.lastIndexOf('.'), path.lastIndexOf('['), 0));
}

type Report = (issue: Issue, offset: number) => void;

function readNode(node: Node, path: string, places: Places, report: Report): unknown {
  places.values.set(path, node.offset);
  switch (node.type) {
    case 'object':
      return readObject(node, path, places, report);
    case 'array':
      return (node.children ?? []).map((item, index) =>
        readNode(item, fieldPath(path, index), places, report),
      );
    case 'number':
      // Too large for a double is infinite, and infinity is not a number that a builder can mean.
      if (!Number.isFinite(node.value))
        report({ code: 'not-json', path, reason: 'the number is too large' }, node.offset);
      return node.value;
    default:
      return node.value;
  }
}

function readObject(node: Node, path: string, places: Places, report: Report): Record<string, unknown> {
  const entries = new Map<string, unknown>();
  for (const property of node.children ?? []) {
    const [keyNode, valueNode] = property.children ?? [];
    if (!keyNode || !valueNode) throw new Error(`property without key and value at ${property.offset}`);
    const key = String(keyNode.value);
    const keyPath = fieldPath(path, key);
    if (key === '__proto__') report({ code: 'unknown-key', path, given: key }, keyNode.offset);
    if (entries.has(key)) report({ code: 'duplicate-name', path: keyPath, given: key }, keyNode.offset);
    places.keys.set(keyPath, keyNode.offset);
    entries.set(key, readNode(valueNode, keyPath, places, report));
  }
  return Object.fromEntries(entries);
}

function sizeIssue(text: string, positions: Positions): Issue | undefined {
  if (text.length > MAX_TEXT_LENGTH) {
    return { code: 'too-large', path: '', given: text.length, max: MAX_TEXT_LENGTH, unit: 'characters' };
  }
  const deep = firstDeeperThan(text, MAX_DEPTH);
  if (deep === undefined) return undefined;
  return {
    code: 'too-large',
    path: '',
    given: MAX_DEPTH + 1,
    max: MAX_DEPTH,
    unit: 'levels of nesting',
    at: positions(deep),
  };
}

/** Offset of the first bracket beyond `max` levels; done before parsing, which recurses. */
function firstDeeperThan(text: string, max: number): number | undefined {
  let depth = 0;
  let inString = false;
  for (let i = 0; i < text.length; i++) {
    const char = text[i];
    if (inString) {
      if (char === '\\') i++;
      // A broken string ends with its line, as the parser sees it.
      else if (char === '"' || char === '\n' || char === '\r') inString = false;
    } else if (char === '"') inString = true;
    else if (char === '{' || char === '[') {
      depth++;
      if (depth > max) return i;
    } else if (char === '}' || char === ']') depth = Math.max(0, depth - 1);
  }
  return undefined;
}

function positionsIn(text: string): Positions {
  const lineStarts = [0];
  for (const match of text.matchAll(/\r\n|\n|\r/g)) lineStarts.push(match.index + match[0].length);
  return (offset) => {
    let low = 0;
    let high = lineStarts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((lineStarts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: offset - (lineStarts[low] ?? 0) + 1 };
  };
}

const SYNTAX: Readonly<Record<string, string>> = {
  InvalidSymbol: 'a word that JSON does not know (texts need double quotes)',
  InvalidNumberFormat: 'a number that is not written as JSON wants it',
  PropertyNameExpected: 'a key in double quotes is wanted here',
  ValueExpected: 'a value is wanted here',
  ColonExpected: 'a colon is wanted here',
  CommaExpected: 'a comma is wanted here',
  CloseBraceExpected: 'a closing brace } is wanted here',
  CloseBracketExpected: 'a closing bracket ] is wanted here',
  EndOfFileExpected: 'the text should have ended before this',
  InvalidCommentToken: 'JSON has no comments',
  UnexpectedEndOfComment: 'JSON has no comments',
  UnexpectedEndOfString: 'a text without its closing double quote',
  UnexpectedEndOfNumber: 'a number that is not finished',
  InvalidUnicode: 'a \\u that is not followed by four hexadecimal digits',
  InvalidEscapeCharacter: 'a backslash before a character that needs none',
  InvalidCharacter: 'a character that must be written with a backslash',
};

function syntaxIssue(error: ParseError, text: string, positions: Positions): Issue {
  const empty = text.replace(/^\uFEFF/, '').trim() === '';
  const reason = empty
    ? 'the text is empty'
    : (SYNTAX[printParseErrorCode(error.error)] ?? 'an error of syntax');
  return { code: 'not-json', path: '', reason, at: positions(error.offset) };
}
