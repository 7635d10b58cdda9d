import type { PlacedStack, PlacedTube } from '../../bike/index.ts';
import { inches, mm } from '../../quantity/index.ts';
import { tubeSection } from '../../standards/index.ts';
import type { UtilizationRow } from './checks/utilizationRow.ts';
import { type StrengthCore, type StrengthInput, strengthCore } from './strengthCore.ts';

/** A change that was tried by running the same check again. */
export interface Remedy {
  readonly row: UtilizationRow;
  /** In the imperative: what to change. */
  readonly what: string;
  /** Utilization of the same comparison then, and whether it is within the limit. */
  readonly utilization: number;
  readonly holds: boolean;
}

/** Stock walls of steel tube [in]. @source practice */
const WALLS = [0.035, 0.049, 0.058, 0.065, 0.083, 0.095, 0.109, 0.12, 0.134, 0.156, 0.188, 0.25].map((v) =>
  Number(inches(v)),
);
/** Stock sizes of axle and shaft with bearings of the same bore [m]. @source practice */
const SHAFTS = [
  ...[10, 12, 15, 17, 20, 25, 30, 35].map((v) => Number(mm(v))),
  ...[0.5, 0.625, 0.75, 0.875, 1, 1.25].map((v) => Number(inches(v))),
].sort((a, b) => a - b);

/** Rows that get a remedy, tries each, and tries in all: every try is a whole check. */
const ROWS = 4;
const TRIES = 3;
const MOST_TRIES = 8;

/** For the worst rows over their limit: the next sizes up, until one holds. */
export function triedRemedies(input: StrengthInput, core: StrengthCore): readonly Remedy[] {
  const over = core.rows.filter((row) => row.utilization > 1);
  const remedies: Remedy[] = [];
  const done = new Set<string>();
  let left = MOST_TRIES;
  for (const row of over) {
    const key = `${row.part.replace(/\.right$/, '')} ${row.quantity}`;
    if (done.has(key) || done.size >= ROWS || left <= 0) continue;
    done.add(key);
    let last: Remedy | undefined;
    for (const change of changesFor(input, core, row).slice(0, Math.min(TRIES, left))) {
      left--;
      const again = strengthCore(change.input).rows.filter(
        (one) => one.part === row.part && one.quantity === row.quantity,
      );
      const utilization = Math.max(0, ...again.map((one) => one.utilization));
      if (again.length === 0) continue;
      if (last && utilization >= last.utilization) continue;
      last = { row, what: change.what, utilization, holds: utilization <= 1 };
      if (last.holds) break;
    }
    if (last) remedies.push(last);
  }
  return remedies;
}

interface Change {
  readonly what: string;
  readonly input: StrengthInput;
}

function changesFor(input: StrengthInput, core: StrengthCore, row: UtilizationRow): readonly Change[] {
  const tube = input.bike.tubes.find(({ id }) => id === row.part);
  if (row.check === 'tubeWeld' || row.check === 'footWeld') return legChanges(input, core, row);
  if (tube) return wallChanges(input, tube);
  const stacks = Object.entries(input.bike.stacks).filter(([, stack]) => stack.shaft === row.part);
  if (stacks.length > 0) return shaftChanges(input, row, stacks);
  if (input.build.plates[row.part]?.recipe === 'engine-plate') return boltChanges(input, row.part);
  return [];
}

/** Heavier walls of the same tube on both sides, with the weight that they add. */
function wallChanges(input: StrengthInput, tube: PlacedTube): readonly Change[] {
  const walls = WALLS.filter((wall) => wall > tube.wall * 1.01 && wall < tube.outside / 2);
  return walls.map((wall) => {
    const heavier = tubeSection(tube.outside, wall).area / tubeSection(tube.outside, tube.wall).area;
    const isSame = (entry: string): boolean => entry === tube.entry;
    const tubes = input.bike.tubes.map((one) =>
      isSame(one.entry) ? { ...one, wall, mass: one.mass * heavier } : one,
    );
    const parts = input.masses.parts.map((part) =>
      part.id === `tubes.${tube.entry}` || part.id === `tubes.${tube.entry}.right`
        ? { ...part, mass: part.mass * heavier }
        : part,
    );
    return {
      what: `Make "${tube.entry}" of ${(wall * 1000).toFixed(2)} mm (${(wall / inches(1)).toFixed(3)} in) wall`,
      input: { ...input, bike: { ...input.bike, tubes }, masses: { ...input.masses, parts } },
    };
  });
}

function shaftChanges(
  input: StrengthInput,
  row: UtilizationRow,
  stacks: readonly (readonly [string, PlacedStack])[],
): readonly Change[] {
  const [name, stack] = stacks[0]!;
  const { axle } = stack;
  if (!axle) return [];
  return SHAFTS.filter((size) => size > axle.diameter * 1.01).map((diameter) => ({
    what: `Make ${row.part} ${(diameter * 1000).toFixed(1)} mm (${(diameter / inches(1)).toFixed(3)} in) thick, with bearings and bores to suit`,
    input: {
      ...input,
      bike: {
        ...input.bike,
        stacks: { ...input.bike.stacks, [name]: { ...stack, axle: { ...axle, diameter } } },
      },
    },
  }));
}

/** A larger fillet, as far as half more than the thinner part. */
function legChanges(input: StrengthInput, core: StrengthCore, row: UtilizationRow): readonly Change[] {
  const stock =
    core.frame.draft.lines.get(row.part)?.stock.wall ??
    input.patterns.find(({ id }) => id === row.part)?.thickness;
  if (stock === undefined) return [];
  const now = input.build.loads?.weldLeg ?? stock;
  return [1.25, 1.5].map((share) => {
    const leg = now * share;
    const loads = { ...input.build.loads, weldLeg: leg as NonNullable<typeof input.build.loads>['weldLeg'] };
    return {
      what: `Weld it with a leg of ${(leg * 1000).toFixed(1)} mm`,
      input: { ...input, build: { ...input.build, loads } as StrengthInput['build'] },
    };
  });
}

function boltChanges(input: StrengthInput, plate: string): readonly Change[] {
  const isInch = input.build.engine.mount.bolt.includes('in') || input.build.engine.mount.bolt.includes('/');
  const given = input.build.loads?.bolts?.[plate] ?? {};
  const { torque: _torque, ...rest } = given;
  const grades = isInch ? ['grade 8'] : ['10.9', '12.9'];
  return grades.map((grade) => ({
    what: `Use ${grade} bolts, tightened to 75 % of their proof load`,
    input: {
      ...input,
      build: {
        ...input.build,
        loads: {
          ...input.build.loads,
          bolts: { ...input.build.loads?.bolts, [plate]: { ...rest, grade } },
        },
      } as StrengthInput['build'],
    },
  }));
}
