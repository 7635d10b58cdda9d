import type { Bike } from '../../../bike/index.ts';
import type { Issue, SourceRef } from '../../../quantity/index.ts';
import { materialStrength } from '../../../standards/index.ts';
import {
  type AssembledFrame,
  assembleFrame,
  describeMechanism,
  type FrameSolution,
  sectionForces,
  solveFrame,
} from '../../frame/index.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import type { LoadCase } from '../loads/caseTypes.ts';
import type { BikeFrame, ModelFlaw } from '../model/frameTypes.ts';
import { type StressSection, stressSection, tubeStress } from './tubeStress.ts';
import type { UtilizationRow } from './utilizationRow.ts';

/** How strong the stock of a line is, as supplied and beside a weld [Pa]. */
export interface LineStrength {
  readonly yield: number;
  readonly weldedYield: number;
  readonly source: SourceRef;
}

export interface FrameResults {
  readonly assembled: AssembledFrame;
  readonly solutions: readonly FrameSolution[];
  /** Two a member a case: utilization at its start and end, for the colored picture. */
  readonly utilization: readonly Float64Array[];
  /** Worst of each line over all cases. */
  readonly rows: readonly UtilizationRow[];
  /** Largest unbalanced force of all cases against their load [-]. */
  readonly residual: number;
  /** Largest support reaction of all cases against their load [-]. */
  readonly reaction: number;
}

export type FrameOutcome =
  | { readonly ok: true; readonly value: FrameResults }
  | { readonly ok: false; readonly issues: readonly Issue[]; readonly flaws: readonly ModelFlaw[] };

/** Where the stress of a member is looked at. */
interface Sections {
  readonly member: number;
  readonly line: string;
  readonly section: StressSection;
  /** From the start: where the first and the last section is looked at [m]. */
  readonly at: readonly [number, number];
  /** Allowed stress at each [Pa]. */
  readonly allowed: readonly [number, number];
  readonly where: readonly [string, string];
}

/** Solves all cases on one factorization and finds the worst stress around each tube at both ends of each member. */
export function solveBikeFrame(
  frame: BikeFrame,
  cases: readonly LoadCase[],
  strengths: ReadonlyMap<string, LineStrength>,
  settings: LoadSettings,
): FrameOutcome {
  const assembled = assembleFrame(frame.model);
  if (!assembled.ok) {
    const flaws = assembled.mechanisms.map(
      (mechanism): ModelFlaw => ({
        rule: 'mechanism',
        part: frame.draft.places.get(mechanism.node)?.line ?? mechanism.node,
        reason: describeMechanism(mechanism),
      }),
    );
    return { ok: false, issues: assembled.issues, flaws };
  }
  const solved = solveFrame(
    assembled.value,
    cases.map(({ balanced }) => balanced.loads),
  );
  if (!solved.ok) return { ok: false, issues: solved.issues, flaws: [] };
  const sections = sectionsOf(frame, assembled.value, strengths, settings);
  const utilization = solved.value.map(() => new Float64Array(frame.model.members.length * 2));
  const worst = new Map<string, UtilizationRow>();
  cases.forEach((one, c) => {
    const solution = solved.value[c]!;
    for (const section of sections) lookAt(section, one, solution, utilization[c]!, worst, strengths);
  });
  return {
    ok: true,
    value: {
      assembled: assembled.value,
      solutions: solved.value,
      utilization,
      rows: [...worst.values()].sort((a, b) => b.utilization - a.utilization),
      ...leftOver(cases, solved.value),
    },
  };
}

function lookAt(
  { member, line, section, at, allowed, where }: Sections,
  one: LoadCase,
  { memberForces, memberLoads }: FrameSolution,
  utilization: Float64Array,
  worst: Map<string, UtilizationRow>,
  strengths: ReadonlyMap<string, LineStrength>,
): void {
  const ends = memberForces.subarray(member * 12, member * 12 + 12);
  const load = memberLoads.subarray(member * 3, member * 3 + 3);
  for (const k of [0, 1] as const) {
    const f = sectionForces(ends, load, at[k]);
    const stress = tubeStress(section, f.normal, f.shearY, f.shearZ, f.torque, f.momentY, f.momentZ);
    const share = stress / allowed[k];
    utilization[member * 2 + k] = share;
    if (share <= (worst.get(line)?.utilization ?? -1)) continue;
    worst.set(line, {
      part: line,
      case: one.id,
      where: where[k],
      check: 'vonMises',
      quantity: 'equivalent stress',
      value: stress,
      limit: allowed[k],
      kind: 'pressure',
      utilization: share,
      source: strengths.get(line)!.source,
    });
  }
}

function sectionsOf(
  frame: BikeFrame,
  assembled: AssembledFrame,
  strengths: ReadonlyMap<string, LineStrength>,
  { yieldFactor }: LoadSettings,
): Sections[] {
  const welded = new Map(frame.welds.map((weld) => [`${weld.line} ${weld.node}`, weld]));
  return frame.model.members.flatMap((member, index): Sections[] => {
    const line = frame.draft.lines.get(member.id.split('#')[0]!);
    if (!line) return [];
    const { length } = assembled.elements[index]!;
    const { yield: plain, weldedYield } = strengths.get(line.id)!;
    const ends = [member.from, member.to].map((node) => {
      const weld = welded.get(`${line.id} ${node}`);
      const trunk = weld?.kind === 'cope' ? frame.draft.lines.get(weld.with) : undefined;
      const place = frame.draft.places.get(node)!;
      const along = `${Math.round(place.at * 1000)} mm along`;
      return {
        allowed: (weld ? weldedYield : plain) / yieldFactor,
        // A coped end is cut where it meets the trunk's surface, not at its middle line.
        inset: trunk ? Math.min(trunk.stock.outside / 2, length / 2) : 0,
        where: weld ? `at the weld to "${weld.with}", ${along}` : along,
      };
    });
    const [a, b] = [ends[0]!, ends[1]!];
    return [
      {
        member: index,
        line: line.id,
        section: stressSection(line.stock.outside, line.stock.wall),
        at: [a.inset, length - b.inset],
        allowed: [a.allowed, b.allowed],
        where: [a.where, b.where],
      },
    ];
  });
}

function leftOver(cases: readonly LoadCase[], solutions: readonly FrameSolution[]) {
  let [residual, reaction] = [0, 0];
  solutions.forEach((solution, c) => {
    residual = Math.max(residual, solution.residual);
    const most = solution.reactions.reduce((sum, value) => Math.max(sum, Math.abs(value)), 0);
    reaction = Math.max(reaction, most / cases[c]!.balanced.scale);
  });
  return { residual, reaction };
}

/** Strength of every line: tubes by their material, bought parts by the settings. */
export function lineStrengths(bike: Bike, settings: LoadSettings): ReadonlyMap<string, LineStrength> {
  const of = (name: string): LineStrength => materialStrength(name);
  const shaft: LineStrength = {
    yield: settings.shaftYield,
    weldedYield: settings.shaftYield,
    source: { key: 'memory', where: '1018 cold-drawn, unless the file gives another' },
  };
  return new Map<string, LineStrength>([
    ...bike.tubes.map((tube) => [tube.id, of(tube.material)] as const),
    ['neck', of('mild-steel')],
    ['stem', of('drawn-tube-1020')],
    ['leg.left', of('drawn-tube-1020')],
    ['leg.right', of('drawn-tube-1020')],
    ['rearAxle', shaft],
    ['frontAxle', shaft],
  ]);
}
