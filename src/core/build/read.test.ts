import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { describeIssue } from '../quantity/index.ts';
import { mergePatch, readBuild, readBuildValue } from './index.ts';
import { migrate } from './migrate.ts';

const text = readFileSync(new URL('../../../demo/light.build.json', import.meta.url), 'utf8');
const light = JSON.parse(text) as Record<string, unknown>;

/** The texts of all issues that a change to the light demo brings. */
function issuesAfter(changes: unknown): string[] {
  const outcome = readBuildValue(mergePatch(light, changes));
  return outcome.ok ? [] : outcome.issues.map(describeIssue);
}

test('a demo reads, and lengths are in SI', () => {
  const outcome = readBuild(text);
  expect(outcome.ok).toBe(true);
  if (outcome.ok) expect(outcome.value.steering.wheelbase).toBeCloseTo(1.03, 12);
});

test('all issues of a file come at once, each with path, line and column', () => {
  const broken = text
    .replace('"wheelbase": "1030 mm"', '"wheelbase": "1030 mn"')
    .replace('"headAngle": "65°"', '"headAngle": "65 mm"')
    .replace('"forkOffset"', '"forkOfset"');
  const outcome = readBuild(broken);
  expect(outcome.ok).toBe(false);
  if (outcome.ok) return;
  const texts = outcome.issues.map(describeIssue);
  expect(texts.some((line) => /^steering\.wheelbase \(line \d+, column \d+\).*1030 mn/.test(line))).toBe(
    true,
  );
  expect(texts.some((line) => /^steering\.headAngle \(line \d+, column \d+\)/.test(line))).toBe(true);
  expect(texts.some((line) => line.includes('did you mean "forkOffset"'))).toBe(true);
  for (const issue of outcome.issues) expect(issue.at?.line).toBeGreaterThan(1);
});

test.each([
  [
    'an unknown node',
    { frame: { tubes: { midStay: { through: ['stayFoot', 'stayHed'] } } } },
    /stayHed.*did you mean "stayHead"/,
  ],
  [
    'an unknown tubing',
    { frame: { tubes: { midStay: { tubing: 'rial' } } } },
    /no tubing is called "rial".*"rail"/,
  ],
  [
    'places in a circle',
    { frame: { nodes: { stayFoot: { from: 'stayHead' }, stayHead: { from: 'stayFoot' } } } },
    /in a circle: /,
  ],
  [
    'a chain that no table has',
    {
      driveline: {
        stages: [
          {
            id: 'first',
            kind: 'chain',
            from: 'engine',
            to: 'rearAxle',
            chain: '#37',
            driverTeeth: 12,
            drivenTeeth: 24,
          },
        ],
      },
    },
    /driveline\.stages\[0\]\.chain: "#37" is not in the table/,
  ],
  [
    'a tire marking that no rule reads',
    { wheels: { front: { tire: { size: 'round', diameter: null } } } },
    /wheels\.front\.tire\.size/,
  ],
  [
    'a wall thicker than the tube',
    { frame: { tubing: { cross: { outside: '20 mm', wall: '10 mm' } } } },
    /no bore is left/,
  ],
  ['a number where a text is wanted', { about: { name: 7 } }, /about\.name/],
  ['a value out of range', { steering: { headAngle: '12°' } }, /steering\.headAngle: found 12 .*40 to 90/],
])('%s is told', (_what, changes, expected) => {
  const issues = issuesAfter(changes);
  expect(issues.join('\n')).toMatch(expected);
});

test('a variant is a merge patch on the file, and an unknown one is told with the nearest', () => {
  const changed = readBuild(text, { variant: 'longer-shaft-engine' });
  expect(changed.ok && changed.value.engine.shaft.face).toBeCloseTo(0.068, 12);
  const unknown = readBuild(text, { variant: 'longer-shaft-engin' });
  expect(!unknown.ok && describeIssue(unknown.issues[0])).toMatch(/did you mean "longer-shaft-engine"/);
});

describe('variants are read with the file', () => {
  const changes = { wheels: { rear: { hubz: 1 } }, engine: { place: { from: 'nowhere' } } };
  const wrong = JSON.stringify(mergePatch(light, { variants: { bad: { changes } } }), null, 2);
  const lineAfter = (part: string, after: string): number =>
    wrong.slice(0, wrong.indexOf(part, wrong.indexOf(after))).split('\n').length;

  test.each([undefined, 'bad', 'longer-shaft-engine'])(
    'a wrong one is told at its own changes, whichever is asked for: %s',
    (variant) => {
      const outcome = readBuild(wrong, variant === undefined ? {} : { variant });
      expect(outcome.ok ? [] : outcome.issues).toEqual([
        expect.objectContaining({
          code: 'unknown-key',
          path: 'variants.bad.changes.wheels.rear.hubz',
          given: 'hubz',
          at: expect.objectContaining({ line: lineAfter('"hubz"', '"bad"') }),
        }),
      ]);
    },
  );

  test('a name that only the variant misspells', () => {
    const { wheels: _, ...engine } = changes;
    const outcome = readBuildValue(mergePatch(light, { variants: { bad: { changes: engine } } }), {
      whole: true,
    });
    expect(outcome.ok ? [] : outcome.issues).toMatchObject([
      { code: 'unknown-name', path: 'variants.bad.changes.engine.place.from', given: 'nowhere' },
    ]);
  });

  test('what is wrong in the file is not told again for each variant', () => {
    const outcome = readBuildValue(mergePatch(light, { engine: { place: { from: 'nowhere' } } }), {
      whole: true,
    });
    expect(outcome.ok ? [] : outcome.issues.map(({ path }) => path)).toEqual(['engine.place.from']);
  });
});

test.each([['a\u0000b'], ['a\nb'], ['a\u007fb'], ['\u009b']])(
  'text with a control character is refused: %j',
  (name) => {
    const outcome = readBuildValue(mergePatch(light, { about: { name } }));
    expect(outcome.ok ? [] : outcome.issues).toMatchObject([{ path: 'about.name' }]);
  },
);

test.each([
  [undefined, /version: missing/],
  ['1', /version: found "1", wanted a whole number/],
  [99, /version 99 is not known; this program reads up to version 1/],
  [0, /version 0 is not known/],
])('version %j is refused', (version, expected) => {
  const outcome = readBuildValue({ ...light, version });
  expect(!outcome.ok && describeIssue(outcome.issues[0])).toMatch(expected);
});

test('a circle is told once, at the place in the file that closes it', () => {
  const outcome = readBuildValue(
    mergePatch(light, {
      engine: { place: { from: 'lone' } },
      frame: { nodes: { lone: { from: 'engineShaft' } } },
    }),
  );
  const circles = (outcome.ok ? [] : outcome.issues).filter((issue) => issue.code === 'conflict');
  expect(circles.map(({ path }) => path)).toEqual(['engine.place']);
  expect(describeIssue(circles[0]!)).toContain('engineBase → lone → engineBase');
});

test('older files are brought up one version at a time', () => {
  const steps = {
    1: (file: Readonly<Record<string, unknown>>) => ({ ...file, renamed: file.old, old: undefined }),
    2: (file: Readonly<Record<string, unknown>>) => ({ ...file, doubled: Number(file.renamed) * 2 }),
  };
  const outcome = migrate({ version: 1, old: 4 }, steps, 3);
  expect(outcome).toEqual({ ok: true, value: { version: 3, renamed: 4, old: undefined, doubled: 8 } });
});

test.each([[null], [[]], ['text'], [3]])('%j is not a build', (value) => {
  const outcome = readBuildValue(value);
  expect(outcome.ok).toBe(false);
});
