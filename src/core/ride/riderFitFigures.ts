import { derived, type Figure, type FigureInput, figureMaker, type QuantityKind } from '../quantity/index.ts';
import { anthropometrySources } from '../standards/index.ts';
import type { RiderFit, SeatTriangle } from './riderFit.ts';

const figure = figureMaker({ id: 'riderFit' });

/** The working of the seat triangle and of each rider; ids are `riderFit.<rider>.<figure>`. */
export function riderFitFigures(triangle: SeatTriangle, fits: readonly RiderFit[]): Figure[] {
  const side = derived('distances seen from the side');
  return [
    figure('seatToPeg', 'a', 'seat to peg', triangle.seatToPeg, 'length', 'distance from the side', [], side),
    figure('pegToGrip', 'b', 'peg to grip', triangle.pegToGrip, 'length', 'distance from the side', [], side),
    figure(
      'seatToGrip',
      'c',
      'seat to grip',
      triangle.seatToGrip,
      'length',
      'distance from the side',
      [],
      side,
    ),
    figure(
      'pegToSeatAngle',
      'α',
      'direction from peg to seat, from straight ahead',
      triangle.pegToSeatAngle,
      'angle',
      'atan2(z, x)',
      [],
      side,
    ),
    figure(
      'seatToGripAngle',
      'β',
      'direction from seat to grip, from straight ahead',
      triangle.seatToGripAngle,
      'angle',
      'atan2(z, x)',
      [],
      side,
    ),
    ...fits.flatMap(fitFigures),
  ];
}

function fitFigures({ rider, angles, groundMargin, lockMargin, clearances }: RiderFit): Figure[] {
  const id = rider.group ? `${rider.group}${rider.percentile}` : 'own';
  const { thigh, shank, upperArm, forearm, inseam } = rider.links;
  const link = (name: string, value: number): FigureInput => ({ name, value, kind: 'length' });
  const leg = [link('L₁', thigh), link('L₂', shank)];
  const arm = [link('L₁', upperArm), link('L₂', forearm)];
  const cosines = 'cos K = (L₁² + L₂² − D²)/(2·L₁·L₂), D between the ends of the two links';
  const hot = clearances.find((one) => one.isHot);
  const source = anthropometrySources.sizes;
  const of = (
    name: string,
    symbol: string,
    words: string,
    value: number,
    kind: QuantityKind,
    formula: string,
    inputs: readonly FigureInput[],
  ): Figure =>
    figure(`${id}.${name}`, symbol, `${words}, ${rider.label}`, value, kind, formula, inputs, source);
  return [
    of('knee', 'K', 'knee angle', angles.knee, 'angle', cosines, leg),
    of(
      'hip',
      'H',
      'hip angle, trunk to thigh',
      angles.hip,
      'angle',
      'angle of trunk and thigh from the side',
      leg,
    ),
    of('elbow', 'E', 'elbow angle', angles.elbow, 'angle', cosines, arm),
    of(
      'trunkLean',
      'λ',
      'trunk from vertical',
      angles.trunkLean,
      'angle',
      'least lean at which the elbow is as bent as at rest',
      arm,
    ),
    of(
      'ground',
      'Δ',
      'left over with both feet flat (negative: short)',
      groundMargin,
      'length',
      'Δ = crotch height + soles − √(seat height² + (seat width/2)²)',
      [link('crotch height', inseam)],
    ),
    ...(lockMargin === undefined
      ? []
      : [
          of(
            'lock',
            'Δ',
            'arm left over to the farther grip at full lock (negative: short)',
            lockMargin,
            'length',
            'Δ = L₁ + L₂ − distance of shoulder and grip',
            arm,
          ),
        ]),
    ...(hot
      ? [
          of(
            'hot',
            'Δ',
            `${hot.side} ${hot.limb} to ${hot.against}, hot (negative: they meet)`,
            hot.gap,
            'length',
            'distance of limb and box less half the thickness of the limb',
            [],
          ),
        ]
      : []),
  ];
}
