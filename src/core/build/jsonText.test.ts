import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeIssue, type Issue } from '../quantity/index.ts';
import { MAX_DEPTH, MAX_TEXT_LENGTH, readJsonText } from './jsonText.ts';

const issuesIn = (text: string): readonly Issue[] => {
  const outcome = readJsonText(text);
  return outcome.ok ? [] : outcome.issues;
};
const codesIn = (text: string): string[] => issuesIn(text).map((issue) => issue.code);
const read = (text: string) => {
  const outcome = readJsonText(text);
  if (!outcome.ok) throw new Error(outcome.issues.map(describeIssue).join('; '));
  return outcome.value;
};
const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

const SAMPLE = '{\n  "frame": {\r\n    "tubes": [ { "size": "1 in" },\n      { "size": 25.4 } ]\n  }\n}';

describe('readJsonText', () => {
  test('reads what JSON.parse reads, byte order mark or not', () => {
    expect(read(SAMPLE).value).toEqual(JSON.parse(SAMPLE));
    expect(read(`\uFEFF${SAMPLE}`).value).toEqual(JSON.parse(SAMPLE));
  });

  test('places values, and a missing field at what should hold it', () => {
    const { locate } = read(SAMPLE);
    expect(locate('frame.tubes[1].size')).toEqual({ line: 4, column: 17 });
    expect(locate('frame.tubes[1].wall')).toEqual({ line: 4, column: 7 });
    expect(locate('frame.tubes[7].wall.x')).toEqual({ line: 3, column: 14 });
    expect(locate('')).toEqual({ line: 1, column: 1 });
  });

  test('places an unknown key at the key, named by its own path or by its parent and name', () => {
    const { place } = read(SAMPLE);
    const [first, second] = place([
      { code: 'unknown-key', path: 'frame', given: 'tubes' },
      { code: 'unknown-key', path: 'frame.tubes', given: 'tubes' },
    ]);
    expect(first.at).toEqual({ line: 3, column: 5 });
    expect(second?.at).toEqual({ line: 3, column: 5 });
  });

  test('places what lies under a name with dots and brackets, and what is missing there', () => {
    const { locate } = read('{"a.b[0]": {"c": 1},\n "": {"d e": [2]}}');
    expect(locate('"a.b[0]".c')).toEqual({ line: 1, column: 18 });
    expect(locate('"a.b[0]".missing')).toEqual({ line: 1, column: 12 });
    expect(locate('""."d e"[0]')).toEqual({ line: 2, column: 15 });
  });

  test('a byte order mark moves no column of a later line', () => {
    expect(read('\uFEFF{\n "a": 1}').locate('a')).toEqual({ line: 2, column: 7 });
  });

  test('gathers all errors of syntax, each with its place', () => {
    const issues = issuesIn('{\n "a": tru,\n "b": [1, 2,],\n "c": "x\n}');
    expect(issues.length).toBeGreaterThanOrEqual(3);
    expect(issues.every((issue) => issue.code === 'not-json')).toBe(true);
    expect(issues.map((issue) => issue.at?.line)).toEqual(expect.arrayContaining([2, 3, 4]));
  });

  test.each([
    ['', ['not-json']],
    ['  \n', ['not-json']],
    ['// note\n1', ['not-json']],
    ['[1,]', ['not-json']],
    ['{"a":1}{', ['not-json']],
    ['1e999', ['not-json']],
    ['NaN', ['not-json', 'not-json']],
    ['{"a":1,"a":2}', ['duplicate-name']],
    ['{"a":1,"a":2,"b":{"c":1,"c":1}}', ['duplicate-name', 'duplicate-name']],
    ['{"__proto__":{"a":1}}', ['unknown-key']],
    ['{"\\u005f_proto__":1}', ['unknown-key']],
  ])('%s gives %j', (text, codes) => {
    expect(codesIn(text)).toEqual(codes);
  });

  test('constructor and prototype are names like others and change no object', () => {
    const { value } = read('{"constructor":{"prototype":{"polluted":true}},"toString":1}');
    expect(Object.keys(value as object)).toEqual(['constructor', 'toString']);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test('size and depth have a limit, at the limit it still reads', () => {
    const nested = (levels: number): string => '['.repeat(levels) + ']'.repeat(levels);
    expect(codesIn(nested(MAX_DEPTH))).toEqual([]);
    expect(codesIn(nested(MAX_DEPTH + 1))).toEqual(['too-large']);
    expect(codesIn('['.repeat(500_000))).toEqual(['too-large']);
    expect(codesIn(JSON.stringify('['.repeat(1000)))).toEqual([]);
    const filled = (length: number): string => `"${'a'.repeat(length - 2)}"`;
    expect(codesIn(filled(MAX_TEXT_LENGTH))).toEqual([]);
    expect(codesIn(filled(MAX_TEXT_LENGTH + 1))).toEqual(['too-large']);
  });

  // Independent check: the language's own reader decides what is JSON.
  test('accepts any JSON text with the value that JSON.parse gives', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), fc.constantFrom(0, 1, '\t'), (text, indent) => {
        const spaced = JSON.stringify(JSON.parse(text), null, indent);
        fc.pre(!spaced.includes('__proto__'));
        expect(read(spaced).value).toEqual(JSON.parse(spaced));
      }),
      { numRuns: 2000 },
    );
  });

  test('a mutated text never throws, and is refused exactly when JSON.parse refuses it', () => {
    const alphabet = [...'{}[]:,"\\ \n\r\t0123456789.-+eEtrufalsn/*\u2028\u00a0\u0000\uFEFFé'];
    const mutation = fc.record({
      at: fc.nat(),
      put: fc.constantFrom('', ...alphabet),
      cut: fc.nat({ max: 3 }),
    });
    const base = fc.oneof(fc.constant(SAMPLE), fc.json({ maxDepth: 3 }));
    fc.assert(
      fc.property(base, fc.array(mutation, { minLength: 1, maxLength: 6 }), (start, mutations) => {
        const text = mutations.reduce((now, { at, put, cut }) => {
          const i = at % (now.length + 1);
          return now.slice(0, i) + put + now.slice(i + cut);
        }, start);
        const stripped = text.replace(/^\uFEFF/, '');
        const codes = codesIn(text);
        const ours = codes.every(
          (code) => code === 'duplicate-name' || code === 'unknown-key' || code === 'too-large',
        );
        const infinite = issuesIn(text).some(
          (issue) => issue.code === 'not-json' && issue.reason.includes('too large'),
        );
        expect(ours || infinite).toBe(parses(stripped));
      }),
      { numRuns: 10_000 },
    );
  });

  test('the time to read grows with the length, not with its square', () => {
    const text = JSON.stringify(Array.from({ length: 50_000 }, (_, i) => ({ [`key${i}`]: i })));
    expect(text.length).toBeGreaterThan(900_000);
    const start = performance.now();
    expect(codesIn(text)).toEqual([]);
    // Seen: 0.6 s, 2 s on a loaded machine; a reader that grows with the square of the length takes minutes.
    expect(performance.now() - start).toBeLessThan(15_000);
  });
});
