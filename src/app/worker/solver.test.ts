import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Answer, SolverApi } from './messages.ts';
import { createSolver } from './solver.ts';

const light = JSON.parse(readFileSync(new URL('../../../demo/light.build.json', import.meta.url), 'utf8'));
const withWheelbase = (wheelbase: string) => ({ ...light, steering: { ...light.steering, wheelbase } });
const PRINTED = { units: 'mm', date: '2026-01-02' } as const;

function good(solver: SolverApi, file: unknown, step: number, opened = 0): Answer {
  const reply = solver.solve(file, { step, opened });
  if (!reply.ok) throw new Error(JSON.stringify(reply.issues));
  return reply.answer;
}

const solver = () => createSolver(() => 0);
const wheelbaseIn = (answer: Answer) =>
  answer.sinceEdit.figures.find(({ id }) => id === 'steering.design.wheelbase');

describe('what changed', () => {
  test('nothing on opening; an edit is compared with what was before it, through all its keystrokes', () => {
    const one = solver();
    expect(good(one, light, 0).sinceEdit.figures).toEqual([]);
    good(one, withWheelbase('1040 mm'), 1);
    const answer = good(one, withWheelbase('1045 mm'), 1);
    expect(wheelbaseIn(answer)).toMatchObject({ before: { mm: '1030.0 mm' }, after: { mm: '1045.0 mm' } });
  });

  test('the next edit starts from there, the file as opened stays', () => {
    const one = solver();
    good(one, light, 0);
    good(one, withWheelbase('1040 mm'), 1);
    const answer = good(one, withWheelbase('1050 mm'), 2);
    expect(wheelbaseIn(answer)).toMatchObject({ before: { mm: '1040.0 mm' } });
    expect(answer.sinceOpening.figures.find(({ id }) => id === 'steering.design.wheelbase')).toMatchObject({
      before: { mm: '1030.0 mm' },
    });
    expect(good(one, light, 3, 1).sinceOpening.figures).toEqual([]);
  });

  test('an edit that passes through errors is still compared with the last good result before it', () => {
    const one = solver();
    good(one, light, 0);
    expect(one.solve(withWheelbase('10'.concat(' mn')), { step: 1, opened: 0 }).ok).toBe(false);
    expect(wheelbaseIn(good(one, withWheelbase('1040 mm'), 1))).toMatchObject({
      before: { mm: '1030.0 mm' },
    });
  });
});

test('errors keep their path and lose no word', () => {
  const reply = solver().solve(withWheelbase('12 mn'), { step: 0, opened: 0 });
  expect(reply).toMatchObject({ ok: false, issues: [{ path: 'steering.wheelbase' }] });
  expect(!reply.ok && reply.issues[0]?.text).toMatch(/^found "12 mn", wanted a length/);
});

test('a text that is no JSON is told with line and column', () => {
  const read = solver().readText('{\n "a": x }');
  expect(!read.ok && read.issues[0]?.text).toMatch(/^line 2, column 7: not readable as JSON/);
});

test('an older revision is not drawn', () => {
  const one = solver();
  const { revision } = good(one, light, 0);
  expect(one.picture(revision, 'left', true)).toContain('data-part="wheels.rear"');
  good(one, withWheelbase('1040 mm'), 1);
  expect(one.picture(revision, 'left', true)).toBeUndefined();
  expect(one.solids(revision)).toBeUndefined();
  expect(one.sheets(revision, PRINTED)).toBeUndefined();
});

test('pictures from each side leave the rider out when asked', () => {
  const one = solver();
  const { revision } = good(one, light, 0);
  for (const sight of ['left', 'right', 'top'] as const) {
    expect(one.picture(revision, sight, false)).not.toContain('data-part="rider"');
    expect(one.picture(revision, sight, false)).toContain('data-part="frame.tubes.lowerRail"');
  }
});

test('each listed sheet can be drawn', () => {
  const one = solver();
  const { revision } = good(one, light, 0);
  const names = one.sheets(revision, PRINTED) ?? [];
  expect(names.length).toBeGreaterThan(5);
  expect(new Set(names.map(({ id }) => id)).size).toBe(names.length);
  for (const { id } of names) expect(one.sheet(revision, PRINTED, id)).toMatch(/^<svg /);
});

test('an answer can be sent: it is plain data, without a number that is not one', () => {
  const answer = good(solver(), light, 0);
  expect(structuredClone(answer)).toEqual(answer);
  expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity/);
  const keys = answer.findings.map(({ key }) => key);
  expect(new Set(keys).size).toBe(keys.length);
});
