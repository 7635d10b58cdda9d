import { derived, type Figure, type FigureInput, practice } from '../../quantity/index.ts';
import type { BeltStrength, SeatFit } from './checks/drive/driveTypes.ts';
import type { StrengthCore } from './strengthCore.ts';

/** Figures of drives that no limit is known for: outboard bearing, a bearing out of line, belts, seats. */
export const driveFigures = (core: StrengthCore): readonly Figure[] => [
  ...outboardFigures(core),
  ...misalignmentFigures(core),
  ...core.drive.belts.flatMap(beltFigures),
  ...core.drive.seats.flatMap(seatFigures),
];

function outboardFigures({ drive }: StrengthCore): Figure[] {
  return drive.shafts.flatMap(({ id, outboard }): Figure[] =>
    outboard
      ? [
          {
            id: `strength.${id}.outboardStress`,
            symbol: 'σ',
            name: `largest stress of ${id} without an outboard bearing`,
            value: outboard.without.maxStress,
            kind: 'pressure',
            formula: 'the same shaft on its other bearings',
            inputs: [
              { name: 'with it', value: outboard.with.maxStress, kind: 'pressure' },
              { name: 'moment without', value: outboard.without.maxMoment, kind: 'torque' },
              { name: 'moment with', value: outboard.with.maxMoment, kind: 'torque' },
              { name: 'tilt without', value: outboard.without.maxSlope, kind: 'angle' },
              { name: 'tilt with', value: outboard.with.maxSlope, kind: 'angle' },
            ],
            source: derived('continuous beam'),
          },
        ]
      : [],
  );
}

function misalignmentFigures({ drive }: StrengthCore): Figure[] {
  return drive.shafts.flatMap(({ id, misalignment }): Figure[] => {
    if (!misalignment) return [];
    const { offset, item, loaded, reaction, stress } = misalignment;
    return [
      {
        id: `strength.${id}.misalignment`,
        symbol: 'R',
        name: `reaction that ${item} set off the line adds at ${loaded}`,
        value: reaction,
        kind: 'force',
        formula: 'the shaft without load, one support moved',
        inputs: [
          { name: 'offset', value: offset, kind: 'length' },
          { name: 'stress that it adds', value: stress, kind: 'pressure' },
        ],
        source: practice('a bearing lined up with a straightedge and tacked comes 0.5 mm off'),
      },
    ];
  });
}

function beltFigures(belt: BeltStrength): Figure[] {
  const figure = (
    id: string,
    symbol: string,
    name: string,
    value: number,
    formula: string,
    inputs: FigureInput[],
  ): Figure => ({
    id: `strength.${belt.drive}.${id}`,
    symbol,
    name: `${name}, ${belt.drive}`,
    value,
    kind: 'force',
    formula,
    inputs,
    source: { key: 'shigley-9', where: 'sections 17-2 and 17-3; friction 0.3 by practice' },
  });
  const sides: FigureInput[] = [
    { name: 'F1', value: belt.tight, kind: 'force' },
    { name: 'F2', value: belt.slack, kind: 'force' },
    { name: 'θ', value: belt.wrap, kind: 'angle' },
    { name: 'e^(µ·θ/sin(β/2))', value: belt.ratio, kind: 'ratio' },
    { name: 'm·v²', value: belt.centrifugal, kind: 'force' },
  ];
  return [
    figure('beltMean', 'Fi', 'mean tension of both strands', belt.mean, 'Fi = (F1 + F2)/2', sides),
    figure(
      'beltShaftLoad',
      'R',
      'both strands together on a shaft',
      belt.shaftLoad,
      'R = |(F1 − m·v²)·e1 + (F2 − m·v²)·e2|, e along each strand',
      sides,
    ),
    figure(
      'beltClamp',
      'S',
      'force that must press the sheaves together',
      belt.clampNeeded,
      'S = (F1 − F2)·cos(β/2)/(2·µ)',
      sides,
    ),
  ];
}

function seatFigures(seat: SeatFit): Figure[] {
  if (!seat.tightest) return [];
  const inputs: FigureInput[] = [
    { name: 'largest interference', value: seat.interference.most, kind: 'length' },
    { name: 'least interference', value: seat.interference.least, kind: 'length' },
    { name: 'p', value: seat.tightest.pressure, kind: 'pressure' },
    { name: 'σθ', value: seat.tightest.hubHoop, kind: 'pressure' },
  ];
  return [
    {
      id: `strength.${seat.plate}.pushForce`,
      symbol: 'F',
      name: `force to push ${seat.designation} into ${seat.plate} at the tightest`,
      value: seat.tightest.pushForce,
      kind: 'force',
      formula: 'F = π·d·L·µ·p',
      inputs,
      source: { key: 'shigley-9', where: 'section 3-16; friction 0.12 from memory' },
    },
  ];
}
