import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readBuild, solve } from '../../src/core/index.ts';

/** What is wrong with the demo on purpose, by rule; each was put in by hand. */
const PUT_IN: readonly string[] = [
  // The drive: a sprocket set by eye, a slot too short for the next link, no screw to set it, one great sprocket, no clutch.
  'chain-line.offset',
  'tension.outside-travel',
  'plate.slot-too-short',
  'chain.pusher',
  'chain.ratio',
  'clearance.sprocket-ground',
  'driveline.no-clutch',
  // Axles: one cut short, a washer of the next size down, legs nearer than hub and nuts need, a bore without its sleeve.
  'stack.axle-too-short',
  'stack.bore-under-shaft',
  'stack.negative-spacer',
  'stack.needs-sleeve',
  // A wide tire, and a cross tube where chain and tire run.
  'tire-gap',
  'clearance.chain-tube',
  'clearance.tire-tube',
  // Steering too steep, with too much offset.
  'steering.trail',
  'steering.rake',
  // One brake only, wrapped the wrong way, on nothing that holds it.
  'brakes.two',
  'brakes.band-direction',
  'brakes.reaction-arm',
  // The rider: a high seat and low pegs.
  'rider.standing',
  'rider.peg-height',
  // What the shop cannot make: another bend radius than the die's, tubes longer than the bars, a plate larger than the sheet.
  'tube.die',
  'tube.longer-than-stock',
  'plate.does-not-fit-stock',
  // Plates: an engine pattern over the old holes, a hole the drill has no bit for, one at the edge, a sharp bend in aluminum.
  'plate.breaks-into-old-hole',
  'plate.hole-too-small',
  'plate.edge-distance',
  'plate.bend-radius',
];

const text = readFileSync(new URL('../../demo/wrong.build.json', import.meta.url), 'utf8');
const build = readBuild(text);
const ruleOf = (id: string): string => id.split(':')[0]!;

test('the wrong demo reads without issues and says that it is invented and wrong', () => {
  expect(build.ok ? [] : build.issues).toEqual([]);
  if (!build.ok) return;
  expect(build.value.about.invented).toBe(true);
  expect(build.value.about.summary).toMatch(/wrong on purpose/);
  expect(build.value.about.summary).toMatch(/Do not build it/);
});

test('every mistake put into it is found', () => {
  if (!build.ok) throw new Error('the demo does not read');
  const rules = new Set(solve(build.value).findings.map((finding) => ruleOf(finding.id)));
  expect(PUT_IN.filter((rule) => !rules.has(rule))).toEqual([]);
  expect(rules.size).toBeGreaterThanOrEqual(12);
});

test('what stops the work comes first, with a remedy and a place in the file for most', () => {
  if (!build.ok) throw new Error('the demo does not read');
  const { findings } = solve(build.value);
  const severities = findings.map((finding) => finding.severity);
  expect(severities.lastIndexOf('stop')).toBeLessThan(severities.indexOf('caution'));
  expect(severities.lastIndexOf('caution')).toBeLessThan(severities.indexOf('note'));
  for (const finding of findings.filter(({ severity }) => severity === 'stop'))
    expect(finding.remedy, finding.id).toBeTruthy();
});
