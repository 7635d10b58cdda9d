import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { mergePatch, readBuild } from '../build/index.ts';
import { solve } from '../solve.ts';
import { strengthOf } from '../strength/index.ts';
import { strengthFindings } from './strengthRules.ts';

function findingsOf(changes: unknown) {
  const file: unknown = JSON.parse(readFileSync('demo/light.build.json', 'utf8'));
  const build = readBuild(JSON.stringify(mergePatch(file, changes)));
  if (!build.ok) throw new Error(JSON.stringify(build.issues));
  return strengthFindings(strengthOf(solve(build.value)));
}

describe('strength', () => {
  const weak = findingsOf({ frame: { tubing: { rail: { wall: '0.9 mm' } } }, loads: { bumpFactor: 8 } });
  const strong = findingsOf({
    frame: { tubing: { rail: { wall: '4 mm' }, cross: { wall: '4 mm' } } },
    loads: { yieldFactor: 1, bumpFactor: 1.5, dropHeight: '10 mm', pegLoad: '300 N' },
  });

  test('thin tubes under hard bumps pass yield: a stop, with value over limit and a remedy that was tried', () => {
    const stops = weak.filter(({ severity }) => severity === 'stop');
    expect(stops.length).toBeGreaterThan(0);
    for (const one of stops) {
      expect(one.value!).toBeGreaterThan(one.limit!);
      expect(one.margin).toBeCloseTo(one.limit! - one.value!, 3);
    }
    expect(weak.some(({ remedy }) => remedy?.includes('tried'))).toBe(true);
  });

  test('thick tubes under mild loads are silent on the frame', () => {
    expect(strong.filter(({ id }) => /equivalent-stress:(lower|upper)Rail/.test(id))).toEqual([]);
    expect(strong.filter(({ severity }) => severity === 'stop')).toEqual([]);
  });

  test('every margin is negative, every id once, and nothing is called safe', () => {
    for (const findings of [weak, strong]) {
      expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length);
      for (const one of findings) {
        if (one.margin !== undefined) expect(one.margin).toBeLessThan(0);
        expect(`${one.what} ${one.why} ${one.remedy}`).not.toMatch(/\bsafe\b|NaN|undefined" /);
      }
    }
  });

  test('a thread that runs into the plate is told, a little as a note, past the middle as a caution', () => {
    const thread = (threadLeft: string) =>
      findingsOf({ stacks: { rear: { axle: { threadLeft } } } }).filter(({ id }) =>
        id.includes('axle-thread'),
      );
    expect(thread('19.5 mm')).toEqual([]);
    expect(thread('21 mm').map(({ severity }) => severity)).toEqual(['note']);
    expect(thread('25 mm').map(({ severity }) => severity)).toEqual(['caution']);
  });

  test('a chain over its rating of wear: a note, below a quarter of its power a caution, never among the worst', () => {
    const build = readBuild(readFileSync('demo/heavy.build.json', 'utf8'));
    if (!build.ok) throw new Error('the demo does not read');
    const strength = strengthOf(solve(build.value));
    const rated = (value: number) =>
      strengthFindings({
        ...strength,
        rows: strength.rows.map((row) =>
          row.check === 'chainPower' ? { ...row, value, utilization: 1 / value } : row,
        ),
      }).filter(({ id }) => id.startsWith('strength.chainPower'));
    expect(new Set(rated(0.5).map(({ severity }) => severity))).toEqual(new Set(['note']));
    expect(new Set(rated(0.24).map(({ severity }) => severity))).toEqual(new Set(['caution']));
    expect(rated(0.24)[0]!.why).toMatch(/15 000 hours at full power, not what breaks/);
    const overAnyWear = strength.rows.filter((row) => row.check === 'chainPower' && row.utilization > 1);
    expect(overAnyWear.length).toBeGreaterThan(0);
    expect(strength.worst.map(({ check }) => check)).not.toContain('chainPower');
  });

  test('a hub whose bearings wear out early is told what to do', () => {
    const [hub] = findingsOf({ loads: { bearingLife: 30_000 } }).filter(
      ({ id }) => id === 'strength.wheelBearingLife:rearAxle',
    );
    expect(hub!.remedy).toMatch(/larger bearings/);
    expect(hub!.severity).toBe('caution');
  });
});
