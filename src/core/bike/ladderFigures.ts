import { derived, type Figure, practice } from '../quantity/index.ts';
import type { ChainLine, Ladder, LadderStep, TireGap } from './bike.ts';

/** Figures of the ladder: planes, offsets and angles of the lines, room beside the tires; ids like `line.final.offset`. */
export function ladderFigures(ladder: Ladder): readonly Figure[] {
  return [...ladder.lines.flatMap(lineFigures), ...ladder.gaps.map(gapFigure)];
}

function lineFigures(line: ChainLine): readonly Figure[] {
  const of = `drive ${line.drive}`;
  const { driverY, drivenY, offset, angle, centerDistance } = line;
  return [
    planeFigure(
      `line.${line.drive}.driver`,
      `driving plane of ${of}, left of the center plane`,
      driverY,
      line.driverSteps,
    ),
    planeFigure(
      `line.${line.drive}.driven`,
      `driven plane of ${of}, left of the center plane`,
      drivenY,
      line.drivenSteps,
    ),
    {
      id: `line.${line.drive}.offset`,
      symbol: 'e',
      name: `offset of the planes, ${of}`,
      value: offset,
      kind: 'length',
      formula: 'e = y_driver − y_driven',
      inputs: [
        { name: 'y_driver', value: driverY, kind: 'length' },
        { name: 'y_driven', value: drivenY, kind: 'length' },
      ],
      source: practice(
        "sprockets in line within 1 mm to 1 m of center distance, chain makers' fitting notes",
      ),
    },
    {
      id: `line.${line.drive}.angle`,
      symbol: 'α',
      name: `angle of the line, ${of}`,
      value: angle,
      kind: 'angle',
      formula: 'α = atan(e / C)',
      inputs: [
        { name: 'e', value: offset, kind: 'length' },
        { name: 'C', value: centerDistance, kind: 'length' },
      ],
      source: derived('offset over the center distance'),
    },
  ];
}

/** Steps count toward the plane's own side; the figure is signed, left positive. */
function planeFigure(id: string, name: string, value: number, steps: readonly LadderStep[]): Figure {
  return {
    id,
    symbol: 'y',
    name,
    value,
    kind: 'length',
    formula: 'y = Σ steps, left positive',
    inputs: steps.map((step) => ({ name: step.label, value: step.to - step.from, kind: 'length' })),
    source: derived('sums of lengths along the shaft'),
  };
}

function gapFigure(gap: TireGap): Figure {
  const others = gap.steps.filter((step) => !step.label.startsWith('gap to '));
  const near = gap.steps.reduce((sum, step) => sum + step.length, 0);
  return {
    id: `tireGap.${gap.against.replaceAll(' ', '-')}`,
    symbol: 'g',
    name: `room between tire and ${gap.against}`,
    value: gap.gap,
    kind: 'length',
    formula: `g = distance − ${others.map((step) => step.label).join(' − ')}`,
    inputs: [
      { name: 'distance', value: near, kind: 'length' },
      ...others.map((step) => ({ name: step.label, value: step.length, kind: 'length' as const })),
    ],
    source: practice('tire to chain 5 mm plus growth'),
  };
}
