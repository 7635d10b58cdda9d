import { type AssembledFrame, type FrameSolution, sectionForces } from '../../frame/index.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import type { LoadCase } from '../loads/caseTypes.ts';
import type { DraftLine } from '../model/draft.ts';
import type { BikeFrame, WeldSpot } from '../model/frameTypes.ts';
import type { LineStrength } from './lineStrength.ts';
import { type StressSection, stressSection, tubeStress } from './tubeStress.ts';
import type { UtilizationRow } from './utilizationRow.ts';

/** Stress of every member in every case. */
export interface FrameStress {
  /** Two a member a case: utilization at its start and end, for the colored picture. */
  readonly utilization: readonly Float64Array[];
  /** Worst of each line over all cases. */
  readonly rows: readonly UtilizationRow[];
}

interface Solved {
  readonly frame: BikeFrame;
  readonly assembled: AssembledFrame;
  readonly cases: readonly LoadCase[];
  readonly solutions: readonly FrameSolution[];
  readonly strengths: ReadonlyMap<string, LineStrength>;
  readonly settings: LoadSettings;
}

/** Where the stress of a member is looked at. */
interface Sections {
  readonly member: number;
  readonly line: DraftLine;
  readonly section: StressSection;
  readonly ends: readonly [SectionAt, SectionAt];
}

interface SectionAt {
  /** From the start [m]. */
  readonly x: number;
  /** Allowed stress [Pa]. */
  readonly allowed: number;
  readonly node: string;
  readonly weld?: WeldSpot;
}

/** The section of a line that is used most so far. */
interface Worst {
  readonly line: DraftLine;
  utilization: number;
  stress: number;
  at: SectionAt;
  case: number;
}

/** Stress around each tube at both ends of each member in all cases, and the worst of each line. */
export function stressesOf(of: Solved): FrameStress {
  const { cases, solutions, strengths } = of;
  const utilization = cases.map(() => new Float64Array(of.frame.model.members.length * 2));
  const worst = new Map<string, Worst>();
  for (const sections of sectionsOf(of)) {
    const { line, ends } = sections;
    const found = worst.get(line.id) ?? { line, utilization: -1, stress: 0, at: ends[0], case: 0 };
    worst.set(line.id, found);
    for (let c = 0; c < cases.length; c++) lookAt(sections, solutions[c]!, c, utilization[c]!, found);
  }
  const rows = [...worst.values()].map((found) =>
    rowOf(found, of.frame, cases[found.case]!.id, strengths.get(found.line.id)!),
  );
  return { utilization, rows: rows.sort((a, b) => b.utilization - a.utilization) };
}

function lookAt(
  { member, section, ends }: Sections,
  { memberForces, memberLoads }: FrameSolution,
  index: number,
  utilization: Float64Array,
  worst: Worst,
): void {
  for (let k = 0; k < 2; k++) {
    const at = ends[k]!;
    const f = sectionForces(memberForces, memberLoads, at.x, member);
    const stress = tubeStress(section, f.normal, f.shearY, f.shearZ, f.torque, f.momentY, f.momentZ);
    const share = stress / at.allowed;
    utilization[member * 2 + k] = share;
    if (share <= worst.utilization) continue;
    worst.utilization = share;
    worst.stress = stress;
    worst.at = at;
    worst.case = index;
  }
}

function rowOf(
  { line, utilization, stress, at }: Worst,
  { draft }: BikeFrame,
  caseId: string,
  { source }: LineStrength,
): UtilizationRow {
  const along = `${Math.round(draft.places.get(at.node)!.at * 1000)} mm along`;
  return {
    part: line.id,
    case: caseId,
    where: at.weld ? `at the weld to "${at.weld.with}", ${along}` : along,
    check: 'vonMises',
    quantity: 'equivalent stress',
    value: stress,
    limit: at.allowed,
    kind: 'pressure',
    utilization,
    source,
  };
}

function sectionsOf({ frame, assembled, strengths, settings }: Solved): Sections[] {
  const { draft } = frame;
  const welded = new Map(frame.welds.map((weld) => [`${weld.line} ${weld.node}`, weld]));
  const stock = new Map(
    [...draft.lines.values()].map(({ id, stock: { outside, wall } }) => [id, stressSection(outside, wall)]),
  );
  return assembled.elements.flatMap(({ member: { id, from, to }, length }, member): Sections[] => {
    const line = draft.lines.get(id.split('#')[0]!);
    if (!line) return [];
    const { yield: plain, weldedYield } = strengths.get(line.id)!;
    const sectionAt = (node: string, atStart: boolean): SectionAt => {
      const weld = welded.get(`${line.id} ${node}`);
      const trunk = weld?.kind === 'cope' ? draft.lines.get(weld.with) : undefined;
      // A coped end is cut where it meets the trunk's surface, not at its middle line.
      const inset = trunk ? Math.min(trunk.stock.outside / 2, length / 2) : 0;
      const allowed = (weld ? weldedYield : plain) / settings.yieldFactor;
      return { x: atStart ? inset : length - inset, allowed, node, ...(weld ? { weld } : {}) };
    };
    const ends = [sectionAt(from, true), sectionAt(to, false)] as const;
    return [{ member, line, section: stock.get(line.id)!, ends }];
  });
}
