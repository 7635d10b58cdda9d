import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { lintImports, sourceFiles } from '../../scripts/lint/imports.ts';
import { ROOM_RULES } from '../../scripts/lint/rooms.ts';

const rulesOf = (path: string, text: string): string[] =>
  lintImports([{ path, text }]).map((one) => one.rule);

describe('import directions', () => {
  test.each([
    [
      'a room that looks back up',
      'src/core/geometry/a.ts',
      "import { b } from '../bike/index.ts';",
      'room-geometry',
    ],
    [
      'a type that looks back up',
      'src/core/ride/a.ts',
      "import type { B } from '../strength/index.ts';",
      'room-ride',
    ],
    [
      'a re-export that looks back up',
      'src/core/fit/a.ts',
      "export { b } from '../ride/index.ts';",
      'room-fit',
    ],
    [
      'a late import that looks back up',
      'src/core/build/a.ts',
      "await import('../bike/index.ts');",
      'room-build',
    ],
    ['past the index', 'src/core/bike/a.ts', "import { b } from '../geometry/point.ts';", 'through-index'],
    [
      'past the index from a door',
      'src/cli/a.ts',
      "import { b } from '../core/bike/place.ts';",
      'through-index',
    ],
    [
      'past the index from a test',
      'src/core/bike/a.test.ts',
      "import '../geometry/point.ts';",
      'through-index',
    ],
    [
      'a Node module in the core',
      'src/core/bike/a.ts',
      "import { readFileSync } from 'node:fs';",
      'core-is-pure',
    ],
    [
      'a Node module, old spelling',
      'src/core/bike/a.ts',
      "import { readFileSync } from 'fs';",
      'core-is-pure',
    ],
    [
      'the screen in the core',
      'src/core/bike/a.ts',
      "import { Mesh } from 'three/webgpu';",
      'core-has-no-screen',
    ],
    [
      'a door in the core',
      'src/core/bike/a.ts',
      "import { a } from '../../cli/args.ts';",
      'core-stands-alone',
    ],
    [
      'a room that reads the table of contents',
      'src/core/bike/a.ts',
      "import '../solve.ts';",
      'rooms-are-below',
    ],
    ['one door in the other', 'src/app/a.tsx', "import { a } from '../cli/args.ts';", 'two-doors'],
    ['a room without a rule', 'src/core/attic/a.ts', "import '../bike/index.ts';", 'unknown-room'],
    ['chance in the core', 'src/core/bike/a.ts', 'export const a = Math.random();', 'core-is-pure'],
    ['a face that is not a list', 'src/core/bike/index.ts', "export * from './a.ts';", 'no-export-star'],
    ['a name that says nothing', 'src/core/bike/utils.ts', 'export const a = 1;', 'named-for-its-idea'],
  ])('%s is found', (_name, path, text, rule) => {
    expect(rulesOf(path, text)).toEqual([rule]);
  });

  test('a ring of files is found', () => {
    const files = [
      { path: 'src/core/bike/a.ts', text: "import type { B } from './b.ts';" },
      { path: 'src/core/bike/b.ts', text: "import { a } from './a.ts';" },
    ];
    expect(lintImports(files).map((one) => one.rule)).toEqual(['no-cycle']);
  });

  test.each([
    ['src/core/bike/a.ts', "import { b } from '../geometry/index.ts';"],
    ['src/core/standards/a.ts', "import t from '../../../data/standards/chain.json' with { type: 'json' };"],
    ['src/core/solve.ts', "import { b } from './bike/index.ts';"],
    ['src/cli/a.ts', "import { readFileSync } from 'node:fs'; import { b } from '../core/index.ts';"],
    ['src/app/a.tsx', "import { b } from 'react'; export const c = <p>{b}</p>;"],
    ['src/core/bike/a.test.ts', "import { readFileSync } from 'node:fs';"],
  ])('%s: what is allowed passes (%s)', (path, text) => {
    expect(rulesOf(path, text)).toEqual([]);
  });

  test('every room of the core has a rule, and rules name only rooms', () => {
    const names = ROOM_RULES.map((rule) => rule.room);
    const root = fileURLToPath(new URL('../..', import.meta.url));
    const rooms = new Set(
      sourceFiles(root, 'src/core').flatMap((file) => file.path.split('/').slice(2, -1).slice(0, 1)),
    );
    expect([...rooms].filter((room) => !names.includes(room))).toEqual([]);
    expect(ROOM_RULES.flatMap((rule) => rule.mayImport).filter((room) => !names.includes(room))).toEqual([]);
  });
});
