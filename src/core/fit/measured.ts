import { type Build, buildSchema } from '../build/index.ts';
import {
  bad,
  degrees,
  edgeUnit,
  type Figure,
  good,
  type Issue,
  kilograms,
  knownKeys,
  mm,
  nearestName,
  type Outcome,
  type QuantityKind,
  readWith,
  schemaAt,
} from '../quantity/index.ts';
import { fieldKind, type Path, pathOf, valueAtPath, withValueAt } from './buildPath.ts';

export type Instrument = NonNullable<Build['measured']>[number]['with'];

/** A reading of the finished or half-finished bike beside what was typed. */
export interface Reading {
  /** Path in the build file. */
  readonly path: string;
  readonly kind: QuantityKind;
  /** What the file says, SI of `kind`; missing where it says nothing. */
  readonly typed?: number;
  /** What was read, SI of `kind`. */
  readonly measured: number;
  /** Plus or minus, SI of `kind`. */
  readonly accuracy: number;
  readonly with: Instrument;
  readonly note?: string;
}

/** A build with its readings in place of what was typed. */
export interface MeasuredBuild {
  /** The readings win here; the build passed in stays as typed. */
  readonly build: Build;
  readonly readings: readonly Reading[];
  /** Readings that could not be used. */
  readonly issues: readonly Issue[];
}

/** How far a figure may be off when every reading is off by its accuracy in the worst way. */
export interface FigureDoubt {
  readonly id: string;
  readonly kind: QuantityKind;
  readonly value: number;
  /** Plus or minus, SI of `kind`. */
  readonly doubt: number;
}

/** What an instrument reads, and to what plus or minus [SI of the kind]. Practice, for careful work with home tools. */
const INSTRUMENTS: Readonly<Record<Instrument, { readonly kind: QuantityKind; readonly accuracy: number }>> =
  {
    tape: { kind: 'length', accuracy: mm(1) },
    caliper: { kind: 'length', accuracy: mm(0.05) },
    micrometer: { kind: 'length', accuracy: mm(0.01) },
    rollout: { kind: 'length', accuracy: mm(5) },
    'angle-finder': { kind: 'angle', accuracy: degrees(0.5) },
    scale: { kind: 'mass', accuracy: kilograms(0.1) },
  };

/**
 * Puts the readings of `build.measured` in place of the typed values, in a second build. Where one path was read
 * twice the later reading wins. Accuracy is the reading's own, else the shop's for that instrument, else the usual.
 *
 * @issue unknown-name — a path that leads nowhere; wrong-type — a path to something that is not a number
 * @issue conflict — an instrument that does not read such a quantity; those of the field for the value
 * @source practice, usual accuracy of instruments in a home shop
 */
export function measuredBuild(build: Build): MeasuredBuild {
  const issues: Issue[] = [];
  const readings: Reading[] = [];
  let measured = build;
  for (const [index, entry] of (build.measured ?? []).entries()) {
    const read = readingOf(build, entry, index);
    if (!read.ok) {
      issues.push(...read.issues);
      continue;
    }
    readings.push(read.value.reading);
    measured = withValueAt(measured, read.value.path, read.value.reading.measured);
  }
  return { build: measured, readings, issues };
}

/**
 * Worst-case doubt of each figure: Σ over the readings of the larger of |f(x + a) − f| and |f(x − a) − f|, each by
 * solving again. Figures that no reading moves are left out. Exact where figures are linear in the readings; elsewhere
 * to first order. A figure that some solve does not give (a chain of another length, say) counts where it is given.
 *
 * @param solve figures of a build
 * @source derived, worst-case sum of tolerances
 */
export function figureDoubts(
  measured: MeasuredBuild,
  solve: (build: Build) => readonly Figure[],
): readonly FigureDoubt[] {
  const doubts = new Map<string, number>();
  const figures = solve(measured.build);
  const base = new Map(figures.map((figure) => [figure.id, figure.value]));
  for (const reading of latest(measured.readings)) {
    for (const [id, shift] of shiftsOf(measured.build, reading, base, solve)) {
      doubts.set(id, (doubts.get(id) ?? 0) + shift);
    }
  }
  return figures.flatMap(({ id, kind, value }) => {
    const doubt = doubts.get(id) ?? 0;
    return doubt > 0 ? [{ id, kind, value, doubt }] : [];
  });
}

type Entry = NonNullable<Build['measured']>[number];

function readingOf(
  build: Build,
  entry: Entry,
  index: number,
): Outcome<{ readonly path: Path; readonly reading: Reading }> {
  const place = `measured[${index}]`;
  const path = pathOf(build, entry.path);
  const schema = path && schemaAt(buildSchema, path, build);
  if (path === undefined || schema === undefined) return bad(unknownPath(build, entry.path, `${place}.path`));
  const kind = fieldKind(schema);
  if (kind === undefined)
    return bad({
      code: 'wrong-type',
      path: `${place}.path`,
      given: entry.path,
      wanted: 'the path of a number',
    });
  const instrument = INSTRUMENTS[entry.with];
  if (instrument.kind !== kind) {
    const reason = `${place}: the ${entry.with.replace('-', ' ')} does not read ${entry.path}, which is of kind ${kind}`;
    return bad({ code: 'conflict', path: `${place}.with`, reason });
  }
  const value = readWith(schema as Parameters<typeof readWith<unknown>>[0], entry.value);
  if (!value.ok) {
    const [first, ...more] = value.issues.map((issue) => ({ ...issue, path: `${place}.value` }));
    return bad(first!, ...more);
  }
  if (typeof value.value !== 'number')
    return bad({ code: 'wrong-type', path: `${place}.value`, given: `${value.value}`, wanted: 'a number' });
  const typed = valueAtPath(build, path);
  const reading: Reading = {
    path: entry.path,
    kind,
    ...(typeof typed === 'number' ? { typed } : {}),
    measured: value.value,
    accuracy: accuracyOf(build, entry, kind),
    with: entry.with,
    ...(entry.note === undefined ? {} : { note: entry.note }),
  };
  return good({ path, reading });
}

function accuracyOf(build: Build, entry: Entry, kind: QuantityKind): number {
  // The field is read as a length in millimeters; for an angle or a mass the number is in that kind's edge unit.
  if (entry.accuracy !== undefined)
    return (entry.accuracy / edgeUnit('length').factor) * edgeUnit(kind).factor;
  const shop = build.shop?.instruments;
  const own = { tape: shop?.tape, caliper: shop?.caliper, 'angle-finder': shop?.angleFinder };
  return (
    (entry.with in own ? own[entry.with as keyof typeof own] : undefined) ?? INSTRUMENTS[entry.with].accuracy
  );
}

/** Names the first step that leads nowhere, with the nearest that would lead on. */
function unknownPath(build: Build, text: string, path: string): Issue {
  const steps = text.split(/[.[\]]+/).filter((step) => step !== '');
  const good = steps.findIndex((_, i) => pathOf(build, steps.slice(0, i + 1).join('.')) === undefined);
  const reached = pathOf(build, steps.slice(0, Math.max(0, good)).join('.')) ?? [];
  const parent = valueAtPath(build, reached);
  const schema = reached.length === 0 ? buildSchema : schemaAt(buildSchema, reached, build);
  const names = [...(schema === undefined ? [] : knownKeys(schema, parent)), ...Object.keys(Object(parent))];
  const nearest = nearestName(steps[Math.max(0, good)] ?? '', names);
  return {
    code: 'unknown-name',
    path,
    given: text,
    wanted: 'number in the build file',
    ...(nearest === undefined ? {} : { nearest }),
  };
}

/** One reading a path: the last, which is the one that won. */
const latest = (readings: readonly Reading[]): readonly Reading[] => [
  ...new Map(readings.map((reading) => [reading.path, reading])).values(),
];

function shiftsOf(
  build: Build,
  reading: Reading,
  base: ReadonlyMap<string, number>,
  solve: (build: Build) => readonly Figure[],
): ReadonlyMap<string, number> {
  const path = pathOf(build, reading.path);
  const shifts = new Map<string, number>();
  if (path === undefined || reading.accuracy === 0) return shifts;
  for (const sign of [1, -1]) {
    for (const { id, value } of solve(withValueAt(build, path, reading.measured + sign * reading.accuracy))) {
      const was = base.get(id);
      if (was !== undefined) shifts.set(id, Math.max(shifts.get(id) ?? 0, Math.abs(value - was)));
    }
  }
  return shifts;
}
