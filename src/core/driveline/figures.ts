import type { Figure, FigureDraft, FigureInput, FigureNames, Length, SourceRef } from '../quantity/index.ts';
import { derived, figureMaker, practice } from '../quantity/index.ts';
import type { SheavePair } from './belt.ts';
import { openBelt } from './belt.ts';
import type { ChainDriveInput, ChainDrivePlan } from './chainDrive.ts';
import type { SprocketChain, SprocketDimensions } from './sprocket.ts';

const LENGTH_FORMULA =
  'L = 2·(C/p)·cos α + N1·(π − 2α)/2π + N2·(π + 2α)/2π, sin α = (R2 − R1)/C, R = p/(2·sin(π/N))';
const WRAP_SOURCE = derived('wrap counted in pitches round the teeth');
const B29: SourceRef = { key: 'asme-b29-1', where: 'sprocket diameters' };

/** The working of a planned chain drive. */
export function chainDriveFigures(
  input: ChainDriveInput,
  plan: ChainDrivePlan,
  names: FigureNames,
): readonly Figure[] {
  const { chosen, slot, slack, wear } = plan;
  const p = length('p', input.pitch);
  const pair = [p, count('N1', input.driverTeeth), count('N2', input.drivenTeeth)];
  const span = [length('s', slack.span), length('play', slack.play)];
  const drafts: readonly FigureDraft[] = [
    [
      'exactLinks',
      'L',
      'links at the wanted center, not rounded',
      plan.exactLinks,
      'ratio',
      LENGTH_FORMULA,
      [...pair, length('C', input.wantedCenter)],
      WRAP_SOURCE,
    ],
    [
      'centerDistance',
      'C',
      `center distance with ${chosen.links} links`,
      chosen.center,
      'length',
      `C from ${LENGTH_FORMULA}`,
      [...pair, count('L', chosen.links)],
      WRAP_SOURCE,
    ],
    [
      'wornCenter',
      'Cw',
      'center distance at the wear limit',
      chosen.wornCenter,
      'length',
      'C at L·(1 + w)',
      [...pair, count('L', chosen.links), ratio('w', wear.elongation)],
      wear.source,
    ],
    [
      'driverWrap',
      'θ1',
      'wrap on the driver',
      plan.wraps.driver,
      'angle',
      'θ1 = π − 2α',
      [...pair, length('C', chosen.center)],
      derived('tangents of the pitch circles'),
    ],
    [
      'drivenWrap',
      'θ2',
      'wrap on the driven sprocket',
      plan.wraps.driven,
      'angle',
      'θ2 = π + 2α',
      [...pair, length('C', chosen.center)],
      derived('tangents of the pitch circles'),
    ],
    [
      'slotLength',
      'S',
      'slot travel needed',
      slot.total,
      'length',
      'S = link rounding + wear + fitting',
      [
        length('link rounding', slot.linkRounding),
        length('wear', slot.wear),
        length('fitting', slot.fitting),
      ],
      practice('slot cut before the chain is bought'),
    ],
    [
      'play',
      'f',
      'whole mid-span play to set',
      slack.play,
      'length',
      'f = k·s',
      [ratio('k', slack.playFraction), length('s', slack.span)],
      practice('slack of 4 % of span, 2 % when steep'),
    ],
    [
      'slackCenter',
      'ΔC',
      'center distance that the play is',
      slack.centerChange,
      'length',
      'ΔC = (√(s² + play²) − s)/(dL/dC)',
      span,
      derived('the run pushed to a V, other run taut'),
    ],
    [
      'halfInchCenter',
      'ΔC½',
      'center distance that 1/2 in of play is',
      slack.centerChangeOfHalfInch,
      'length',
      'ΔC = (√(s² + (1/2 in)²) − s)/(dL/dC)',
      [length('s', slack.span)],
      derived('the run pushed to a V, other run taut'),
    ],
    [
      'chordal',
      'δ',
      'chain speed variation',
      plan.chordalVariation,
      'ratio',
      'δ = 1 − cos(180°/N)',
      [count('N', Math.min(input.driverTeeth, input.drivenTeeth))],
      derived('pitch polygon'),
    ],
  ];
  const speed: readonly FigureDraft[] =
    plan.chainSpeed === undefined || input.driverSpeed === undefined
      ? []
      : [
          [
            'chainSpeed',
            'v',
            'chain speed',
            plan.chainSpeed,
            'speed',
            'v = N1·p·n',
            [
              p,
              count('N1', input.driverTeeth),
              { name: 'n', value: input.driverSpeed, kind: 'angularSpeed' },
            ],
            derived('N1 pitches a turn'),
          ],
        ];
  return figuresOf([...drafts, ...speed], names);
}

/** The working of a sprocket's diameters. */
export function sprocketFigures(
  chain: SprocketChain,
  dimensions: SprocketDimensions,
  names: FigureNames,
): readonly Figure[] {
  const p = length('P', chain.pitch);
  const dr = length('Dr', chain.rollerDiameter);
  const n = count('N', dimensions.teeth);
  const pd = length('PD', dimensions.pitchDiameter);
  const isEven = dimensions.teeth % 2 === 0;
  const drafts: readonly FigureDraft[] = [
    [
      'pitchDiameter',
      'PD',
      'pitch diameter',
      dimensions.pitchDiameter,
      'length',
      'PD = P/sin(180°/N)',
      [p, n],
      B29,
    ],
    [
      'outsideDiameter',
      'OD',
      'outside diameter',
      dimensions.outsideDiameter,
      'length',
      'OD = P·(0.6 + cot(180°/N))',
      [p, n],
      B29,
    ],
    ['rootDiameter', 'BD', 'root diameter', dimensions.rootDiameter, 'length', 'BD = PD − Dr', [pd, dr], B29],
    [
      'caliperDiameter',
      'CD',
      'caliper diameter',
      dimensions.caliperDiameter,
      'length',
      isEven ? 'CD = PD − Dr' : 'CD = PD·cos(90°/N) − Dr',
      [pd, dr, n],
      B29,
    ],
    [
      'largestHub',
      'MHD',
      'largest hub diameter',
      dimensions.largestHub,
      'length',
      'MHD = P·(cot(180°/N) − 1) − 0.030 in',
      [p, n],
      B29,
    ],
    [
      'flangeThickness',
      't',
      'tooth flange thickness',
      dimensions.flangeThickness,
      'length',
      't = 0.93·W − 0.006 in',
      [length('W', chain.innerWidth)],
      { key: 'asme-b29-1', where: 'tooth section, single strand' },
    ],
  ];
  return figuresOf(drafts, names);
}

/** The working of an open belt. */
export function beltFigures(pair: SheavePair, center: Length, names: FigureNames): readonly Figure[] {
  const belt = openBelt(pair, center);
  const inputs = [length('d1', pair.driverDiameter), length('d2', pair.drivenDiameter), length('C', center)];
  const source: SourceRef = { key: 'shigley-9', where: 'flat belts, open drive' };
  const drafts: readonly FigureDraft[] = [
    [
      'length',
      'L',
      'pitch length',
      belt.length,
      'length',
      'L = √(4C² − (d2 − d1)²) + ½·(d2·θ2 + d1·θ1)',
      inputs,
      source,
    ],
    [
      'centerDistance',
      'C',
      'center distance',
      center,
      'length',
      'C from L = √(4C² − (d2 − d1)²) + ½·(d2·θ2 + d1·θ1)',
      [...inputs.slice(0, 2), length('L', belt.length)],
      source,
    ],
    [
      'driverWrap',
      'θ1',
      'wrap on the driver',
      Math.PI - 2 * belt.alpha,
      'angle',
      'θ1 = π − 2·asin((d2 − d1)/2C)',
      inputs,
      source,
    ],
    [
      'drivenWrap',
      'θ2',
      'wrap on the driven sheave',
      Math.PI + 2 * belt.alpha,
      'angle',
      'θ2 = π + 2·asin((d2 − d1)/2C)',
      inputs,
      source,
    ],
  ];
  return figuresOf(drafts, names);
}

/** The figures of one thing from its drafts. */
const figuresOf = (drafts: readonly FigureDraft[], names: FigureNames): readonly Figure[] => {
  const figure = figureMaker(names);
  return drafts.map((draft) => figure(...draft));
};

export const length = (name: string, value: number): FigureInput => ({ name, value, kind: 'length' });
export const count = (name: string, value: number): FigureInput => ({ name, value, kind: 'count' });
export const ratio = (name: string, value: number): FigureInput => ({ name, value, kind: 'ratio' });
