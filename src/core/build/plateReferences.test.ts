import { describe, expect, test } from 'vitest';
import { everyPlate, type PlateInput, plateBuild } from '../../../tests/support/plateBuild.ts';
import { referenceIssues } from './references.ts';

const issues = (plates: Readonly<Record<string, PlateInput>>) => referenceIssues(plateBuild(plates));
const changed = (name: string, changes: object): Record<string, PlateInput> => ({
  [name]: { ...everyPlate[name]!, ...changes } as PlateInput,
});

describe('names and designations of plates', () => {
  test('every recipe with known names has no issue', () => {
    expect(issues(everyPlate)).toEqual([]);
  });

  test.each<[Record<string, PlateInput>, string, string]>([
    [changed('axle', { inStack: 'plate-lef' }), 'plates.axle.inStack', 'plate-left'],
    [
      changed('axle', { landings: [{ at: 'rail-rea', tubing: 'rail' }] }),
      'plates.axle.landings[0].at',
      'rail-rear',
    ],
    [
      changed('axle', { landings: [{ at: 'rail-rear', tubing: 'rial' }] }),
      'plates.axle.landings[0].tubing',
      'rail',
    ],
    [changed('counter', { shaft: 'countershaf' }), 'plates.counter.shaft', 'countershaft'],
    [changed('gusset', { between: ['rail', 'dwn'] }), 'plates.gusset.between[1]', 'down'],
    [changed('peg', { place: { from: 'rail-rer' } }), 'plates.peg.place.from', 'rail-rear'],
  ])('an unknown name, with the nearest known one: %#', (plates, path, nearest) => {
    expect(issues(plates)).toMatchObject([{ code: 'unknown-name', path, nearest }]);
  });

  test.each<[Record<string, PlateInput>, string]>([
    [changed('peg', { bolt: 'M7' }), 'plates.peg.bolt'],
    [changed('counter', { seat: { kind: 'bore', bearing: '9999' } }), 'plates.counter.seat.bearing'],
    [changed('free', { holes: [{ x: 30, y: 25, thread: 'M8x0.3' }] }), 'plates.free.holes[0].thread'],
    [
      changed('outboard', { seat: { kind: 'flange', bolts: 2, boltCircle: 90, bolt: '9/32', opening: 40 } }),
      'plates.outboard.seat.bolt',
    ],
  ])('a designation that the tables do not hold: %#', (plates, path) => {
    expect(issues(plates)).toMatchObject([{ code: 'not-in-table', path }]);
  });

  test('a bracket of a brake that is not there', () => {
    expect(issues(changed('caliper', { brake: 'front' }))).toMatchObject([
      { code: 'unknown-name', path: 'plates.caliper.brake' },
    ]);
  });
});
