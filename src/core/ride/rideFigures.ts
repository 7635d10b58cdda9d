import {
  derived,
  type Figure,
  type FigureInput,
  type QuantityKind,
  type SourceRef,
} from '../quantity/index.ts';
import type { Ride } from './fromBuild.ts';
import type { ClutchAnswers, RideAnswers } from './rideAnswers.ts';

type Draft = readonly [
  id: string,
  symbol: string,
  name: string,
  value: number | undefined,
  kind: QuantityKind,
  formula: string,
  inputs: readonly FigureInput[],
  source?: SourceRef,
];

/** The working of going: ratio, speeds, force, hills, clutch. Times are in seconds, heat in joules, by their names. */
export function launchFigures(ride: Ride, answers: RideAnswers): Figure[] {
  const { launch, hill } = answers;
  const inputs = launchInputs(ride);
  const sixty = launch.times.findLast((mark) => mark.speed <= SHOWN_SPEED);
  const drafts: readonly Draft[] = [
    [
      'topSpeed',
      'v_top',
      'top speed on the level',
      launch.top.speed,
      'speed',
      'F(v) = F_roll + ½·ρ·CdA·v², or the governor',
      inputs,
    ],
    [
      'perThousandLow',
      'v/1000',
      'speed per 1000 rpm, lowest ratio',
      answers.perThousand.low,
      'speed',
      'v = ω·R/G',
      inputs,
    ],
    [
      'perThousandHigh',
      'v/1000',
      'speed per 1000 rpm, highest ratio',
      answers.perThousand.high,
      'speed',
      'v = ω·R/G',
      inputs,
    ],
    [
      'timeTo',
      't',
      `time to ${sixty ? (sixty.speed * 3.6).toFixed(0) : '-'} km/h [s]`,
      sixty?.time,
      'ratio',
      '∫ dt, a = (F − F_res)/(m + I/R² + η·J·G²/R²)',
      inputs,
    ],
    [
      'steepestHill',
      'tan α',
      `steepest hill from standstill, by ${hill.steepest.limitedBy}`,
      hill.steepest.grade,
      'ratio',
      'sin(α + atan C) = F/(m·g·√(1 + C²)); tan α = b/h; tan α = (μ·(p − b)/p − C)/(1 − μ·h/p)',
      inputs,
    ],
    [
      'standingHeat',
      'P',
      'heat in clutch or belt standing on that hill',
      hill.standingHeat,
      'power',
      'P = T·ω',
      inputs,
    ],
    [
      'torqueForHill',
      'T',
      'torque that the hill of the use asks of the engine',
      answers.torqueForHill,
      'torque',
      'T = m·g·(sin α + C·cos α)·R/(G·η)',
      [...inputs, ratio('tan α', ride.use.grade)],
    ],
    ...clutchDrafts(answers.clutch, ride, inputs),
  ];
  return drafts.flatMap(([id, symbol, name, value, kind, formula, given, source]) =>
    value === undefined
      ? []
      : [
          {
            id: `ride.${id}`,
            symbol,
            name,
            value,
            kind,
            formula,
            inputs: given,
            source: source ?? derived('power balance at the rear tire'),
          },
        ],
  );
}

/** The time shown is that to the highest timed speed at or below this [m/s]. */
const SHOWN_SPEED = 60 / 3.6;

function clutchDrafts(
  clutch: ClutchAnswers | undefined,
  ride: Ride,
  inputs: readonly FigureInput[],
): Draft[] {
  if (!clutch) return [];
  const { engages = 0, locks = 0, governed } = ride.speeds;
  const speed = (name: string, value: number): FigureInput => ({ name, value, kind: 'angularSpeed' });
  const drum: FigureInput[] =
    ride.drumMass === undefined ? [] : [{ name: 'm_d', value: ride.drumMass, kind: 'mass' }];
  return [
    [
      'biteSpeed',
      'v_0',
      'road speed at first bite',
      clutch.speeds.bite,
      'speed',
      'v = ω·R/G',
      [...inputs, speed('ω', engages)],
    ],
    [
      'lockUpSpeed',
      'v_1',
      'road speed at lock-up',
      clutch.speeds.lockUp,
      'speed',
      'v = ω·R/G',
      [...inputs, speed('ω', locks)],
    ],
    [
      'governedSpeed',
      'v_g',
      'road speed at governed speed',
      clutch.speeds.governed,
      'speed',
      'v = ω·R/G',
      [...inputs, speed('ω', governed)],
    ],
    [
      'launchHeat',
      'Q',
      'heat in the clutch, one launch on the level [J]',
      clutch.launchHeat,
      'ratio',
      'Q = ∫ T·(ω − G·v/R) dt',
      inputs,
    ],
    [
      'hillHeat',
      'Q',
      'heat in the clutch, one launch on the hill of the use [J]',
      clutch.hillHeat,
      'ratio',
      'Q = ∫ T·(ω − G·v/R) dt',
      inputs,
    ],
    [
      'launchRise',
      'ΔT',
      'rise of the drum, one launch on the level [K]',
      clutch.launchRise,
      'ratio',
      'ΔT = Q/(m_d·c)',
      [...inputs, ...drum],
    ],
    [
      'hillRise',
      'ΔT',
      'rise of the drum, one launch on the hill of the use [K]',
      clutch.hillRise,
      'ratio',
      'ΔT = Q/(m_d·c)',
      [...inputs, ...drum],
    ],
    [
      'levelHeat',
      'P',
      'heat in the clutch at riding speed on the level',
      clutch.level.heat,
      'power',
      'P = T·(ω − G·v/R), ω = √(ω0² + T/K)',
      inputs,
    ],
    [
      'slopeHeat',
      'P',
      'heat in the clutch at riding speed on the hill of the use',
      clutch.hill.heat,
      'power',
      'P = T·(ω − G·v/R), ω = √(ω0² + T/K)',
      inputs,
    ],
  ];
}

const ratio = (name: string, value: number): FigureInput => ({ name, value, kind: 'ratio' });

function launchInputs({ launch: { road, drive, rotatingInertia } }: Ride): FigureInput[] {
  return [
    { name: 'm', value: road.mass, kind: 'mass' },
    { name: 'R', value: drive.wheelRadius, kind: 'length' },
    ratio('G', drive.ratio),
    ratio('η', drive.efficiency),
    ratio('C', road.rollingCoefficient),
    { name: 'CdA', value: road.dragArea, kind: 'area' },
    { name: 'ρ', value: road.airDensity, kind: 'density' },
    { name: 'I', value: rotatingInertia, kind: 'inertia' },
    ...(drive.belt ? [ratio('i_low', drive.belt.low), ratio('i_high', drive.belt.high)] : []),
  ];
}
