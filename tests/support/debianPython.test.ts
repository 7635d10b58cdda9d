import { expect, test } from 'vitest';
import { runPython } from './debianPython.ts';

test('a missing module fails with its install line', () => {
  expect(() =>
    runPython('print(1)', {}, { module: 'no_such_module', debianPackage: 'python3-no-such' }),
  ).toThrow('apt-get install python3-no-such');
});

test('a script that fails does not pass', () => {
  expect(() => runPython('raise SystemExit(3)', {}, { module: 'json', debianPackage: 'python3' })).toThrow(
    'python3 failed',
  );
});

test('JSON goes in and comes out', () => {
  const script = 'import json, sys\nprint(json.dumps(sum(json.load(sys.stdin))))';
  expect(runPython(script, [1, 2, 3], { module: 'json', debianPackage: 'python3' })).toBe(6);
});
