import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Finding, readBuild, type Solution, solve } from '../../src/core/index.ts';

function solved(name: string): Solution {
  const build = readBuild(readFileSync(new URL(`../../demo/${name}.build.json`, import.meta.url), 'utf8'));
  if (!build.ok) throw new Error(JSON.stringify(build.issues));
  return solve(build.value);
}

const sentences = ({ what, why, remedy }: Finding): string => [what, why, remedy ?? ''].join(' ');

describe.each(['light', 'heavy', 'wrong'])('findings of the %s demo', (name) => {
  const { findings, build } = solved(name);

  test('have ids of their own', () => {
    const ids = findings.map((finding) => finding.id);
    expect(ids.filter((id, i) => ids.indexOf(id) < i)).toEqual([]);
  });

  test('tell a margin exactly where they tell a value and its limit, short of nothing unless only noted', () => {
    for (const { id, severity, value, limit, margin, kind } of findings) {
      expect(margin === undefined, id).toBe(value === undefined || limit === undefined);
      expect(kind === undefined, id).toBe(value === undefined);
      // A note may tell of something that is within its limit; what stops or cautions is over it.
      if (margin !== undefined && severity !== 'note') expect(margin, id).toBeLessThan(0);
    }
  });

  test('are finite and said in whole sentences', () => {
    for (const finding of findings) {
      const { value = 0, limit = 0, margin = 0, what, why, remedy } = finding;
      expect([value, limit, margin].every(Number.isFinite), finding.id).toBe(true);
      expect(sentences(finding), finding.id).not.toMatch(/undefined|NaN|Infinity|\[object|\bnull\b/);
      for (const text of [what, why, ...(remedy === undefined ? [] : [remedy])])
        expect(text, finding.id).toMatch(/^[A-Z0-9"].*[.)]$/s);
      expect(what, finding.id).not.toMatch(/\.\.$/);
      expect(finding.source.where, finding.id).toBeTruthy();
    }
  });

  test('never say that something is safe', () => {
    for (const finding of findings) expect(sentences(finding), finding.id).not.toMatch(/\bsafe(ly|ty)?\b/i);
  });

  test('point into the file, where they point', () => {
    for (const { path, id } of findings) {
      if (path === undefined) continue;
      const [first] = path.split('.');
      expect(Object.hasOwn(build, first!), `${id}: ${path}`).toBe(true);
    }
  });
});
