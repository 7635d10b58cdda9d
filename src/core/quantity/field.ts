import { z } from 'zod';
import type {
  Angle,
  AngularSpeed,
  Area,
  Density,
  Force,
  Frequency,
  Length,
  LineForce,
  Mass,
  MomentOfInertia,
  Power,
  Pressure,
  Quantity,
  QuantityKind,
  SecondMoment,
  Speed,
  Stiffness,
  Torque,
} from './brand.ts';
import type { GaugeStock } from './gauge.ts';
import type { Issue } from './issue.ts';
import { edgeUnitOf, kindFacts } from './kinds.ts';
import { metaOf } from './meta.ts';
import { readQuantity } from './read.ts';
import { fromSi, toSi } from './units.ts';

/** Reads a JSON number in the edge unit of its kind, or a text with a unit; gives SI. */
export type QuantityField<T extends number> = z.ZodType<T, number | string>;

/** Limits in edge units. */
export interface FieldLimits {
  /** Smallest value taken. */
  readonly min?: number;
  /** Largest value taken. */
  readonly max?: number;
  /** Values must be more than this. */
  readonly above?: number;
  /** Lengths: what a bare gauge number is the gauge of. */
  readonly gauge?: GaugeStock;
}

/** Beyond this in any edge unit no part of a bike is meant. */
const LARGEST = 1e12;
/** Nearer to a limit that must be passed than this in any edge unit, a value is at the limit; in SI it may be 0. */
const SMALLEST = 1e-12;

/** Added to a value, turns -0 (which JSON can hold) into 0 and changes nothing else. */
const POSITIVE_ZERO = 0;

export const lengthField = fieldOf<Length>('length');
export const angleField = fieldOf<Angle>('angle');
export const massField = fieldOf<Mass>('mass');
export const forceField = fieldOf<Force>('force');
export const torqueField = fieldOf<Torque>('torque');
export const pressureField = fieldOf<Pressure>('pressure');
export const powerField = fieldOf<Power>('power');
export const speedField = fieldOf<Speed>('speed');
export const angularSpeedField = fieldOf<AngularSpeed>('angularSpeed');
export const areaField = fieldOf<Area>('area');
export const densityField = fieldOf<Density>('density');
export const inertiaField = fieldOf<MomentOfInertia>('inertia');
export const stiffnessField = fieldOf<Stiffness>('stiffness');
export const lineMassField = fieldOf<Quantity<'kg/m'>>('lineMass');
export const secondMomentField = fieldOf<SecondMoment>('secondMoment');
export const lineForceField = fieldOf<LineForce>('lineForce');
export const frequencyField = fieldOf<Frequency>('frequency');
export const ratioField = fieldOf<number>('ratio');
/** A whole number: teeth, links, pieces. */
export const countField = fieldOf<number>('count');

/** A number of a result, in SI; {@link toEdge} writes it in the edge unit. */
export function resultField(kind: QuantityKind, doc: string): z.ZodType<number, number> {
  return z.number().meta(metaOf(kind, doc));
}

/**
 * SI to the edge unit, free of the last-digit noise of the factor.
 * @throws RangeError for a value that is not finite: JSON would carry it as null.
 */
export function toEdgeValue(value: number, kind: QuantityKind): number {
  if (!Number.isFinite(value)) throw new RangeError(`${value} is no ${kind}`);
  return Number(fromSi(value, edgeUnitOf(kind)).toPrecision(14));
}

function fieldOf<T extends number>(kind: QuantityKind) {
  return (doc: string, limits: FieldLimits = {}): QuantityField<T> => {
    const number =
      kind === 'count'
        ? z.number().meta({ multipleOf: 1, ...schemaLimits(limits) })
        : z.number().meta(schemaLimits(limits));
    const input = z.union([
      number,
      z.string().meta({ examples: [kindFacts[kind].example.split(' or ')[0]] }),
    ]);
    return input
      .transform((given, context): T => {
        const read = readGiven(given, kind, limits);
        if (typeof read === 'number') return read as T;
        context.issues.push({ code: 'custom', input: given, message: read.code, params: { issue: read } });
        return z.NEVER;
      })
      .meta(metaOf(kind, doc)) as unknown as QuantityField<T>;
  };
}

function readGiven(given: number | string, kind: QuantityKind, limits: FieldLimits): number | Issue {
  if (typeof given === 'string') {
    const outcome = readQuantity(given, kind, limits.gauge === undefined ? {} : { gauge: limits.gauge });
    if (!outcome.ok) return outcome.issues[0];
    return limitIssue(toEdgeValue(outcome.value, kind), kind, limits) ?? outcome.value;
  }
  if (kind === 'count' && !Number.isInteger(given))
    return { code: 'wrong-type', path: '', given: `${given}`, wanted: kindFacts.count.name };
  return limitIssue(given, kind, limits) ?? toSi(given, edgeUnitOf(kind)) + POSITIVE_ZERO;
}

function limitIssue(given: number, kind: QuantityKind, limits: FieldLimits): Issue | undefined {
  const unit = kindFacts[kind].edge;
  if (Math.abs(given) > LARGEST) return { code: 'too-large', path: '', given, max: LARGEST, unit };
  const { min, max, above } = limits;
  const isOutside =
    (min !== undefined && given < min) ||
    (max !== undefined && given > max) ||
    (above !== undefined && given <= above + SMALLEST);
  if (!isOutside) return undefined;
  return {
    code: 'out-of-range',
    path: '',
    given,
    ...(min !== undefined ? { min } : {}),
    ...(above !== undefined ? { above } : {}),
    ...(max !== undefined ? { max } : {}),
    unit,
  };
}

function schemaLimits({ min, max, above }: FieldLimits): Record<string, number> {
  return {
    ...(min !== undefined ? { minimum: min } : {}),
    ...(max !== undefined ? { maximum: max } : {}),
    ...(above !== undefined ? { exclusiveMinimum: above } : {}),
  };
}
