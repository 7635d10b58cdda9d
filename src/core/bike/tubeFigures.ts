import { derived, type Figure } from '../quantity/index.ts';
import type { PlacedTube } from './bike.ts';

/** Developed length of every tube and the angle of each of its bends; of a mirrored pair the left one speaks for both. */
export function tubeFigures(tubes: readonly PlacedTube[]): readonly Figure[] {
  return tubes
    .filter((tube) => tube.hand !== 'right')
    .flatMap((tube) => [lengthFigure(tube), ...bendFigures(tube)]);
}

function lengthFigure({ entry, centerline, ends: [start, end] }: PlacedTube): Figure {
  return {
    id: `tube.${entry}.length`,
    symbol: 'L',
    name: `developed length between the longest points, tube ${entry}`,
    value: centerline.length - start.longPoint - end.longPoint,
    kind: 'length',
    formula: 'L = centerline − what the two cuts take',
    inputs: [
      { name: 'centerline', value: centerline.length, kind: 'length' },
      { name: 'start cut', value: start.longPoint, kind: 'length' },
      { name: 'end cut', value: end.longPoint, kind: 'length' },
    ],
    source: derived('straights and arcs of the centerline'),
  };
}

const bendFigures = ({ entry, centerline }: PlacedTube): Figure[] =>
  centerline.bends.map((bend, i) => ({
    id: `tube.${entry}.bend-${i + 1}.angle`,
    symbol: 'θ',
    name: `angle of bend ${i + 1}, tube ${entry}`,
    value: bend.angle,
    kind: 'angle',
    formula: 'θ = angle between the straights',
    inputs: [{ name: 'R', value: bend.radius, kind: 'length' }],
    source: derived('straights and arcs of the centerline'),
  }));
