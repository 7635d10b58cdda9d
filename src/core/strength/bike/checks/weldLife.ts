import type { Pressure, SourceRef } from '../../../quantity/index.ts';
import { detailCategories, fatiguePartialFactors } from '../../../standards/index.ts';
import {
  type FatigueEstimate,
  fatigueEstimate,
  minerDamage,
  stressLife,
} from '../../fatigue/nominalStress.ts';
import { type FrameSolution, sectionForces } from '../../frame/index.ts';
import type { LoadSettings, SpectrumBlock } from '../loads/assumptions.ts';
import type { LoadCase } from '../loads/caseTypes.ts';
import type { BikeFrame, WeldSpot } from '../model/frameTypes.ts';
import type { FrameResults } from './frameStrength.ts';
import { normalStressAround, type StressSection, stressSection } from './tubeStress.ts';

/** How long a weld lasts under the ride spectrum, as a range and never as a promise. */
export interface WeldLife {
  readonly part: string;
  readonly with: string;
  readonly node: string;
  readonly where: string;
  readonly detail: string;
  /** ΔσC [Pa]. */
  readonly category: number;
  readonly estimate: FatigueEstimate;
  /** Largest stress range of the spectrum [Pa]. */
  readonly range: number;
  /** Life one category lower with the partial factor, as given, and one higher [km]; Infinity: nothing counts. */
  readonly life: { readonly low: number; readonly middle: number; readonly high: number };
  readonly source: SourceRef;
}

/** Detail class of each kind of joint. */
const DETAILS: Readonly<Record<WeldSpot['kind'], string>> = {
  cope: 'tube-node-even',
  trunk: 'attachment-on-tube',
  landing: 'tube-slitted-on-plate',
  plate: 'tab-over-100',
};

/** Case that all ranges start from. */
const BASE = 'seated';

/**
 * Life of every weld by nominal stress: ranges between each case of the spectrum and the bike at rest, at twelve places
 * round the tube, summed by Palmgren-Miner at each place; the worst place counts.
 * @source en-1993-1-9, sections 3, 7 and annex A
 */
export function weldLives(
  frame: BikeFrame,
  cases: readonly LoadCase[],
  results: FrameResults,
  settings: LoadSettings,
  detail?: string,
): readonly WeldLife[] {
  const base = cases.findIndex(({ id }) => id === BASE);
  const blocks = settings.spectrum.flatMap((block) => {
    const c = cases.findIndex(({ id }) => id === block.case);
    return c < 0 ? [] : [{ ...block, c }];
  });
  if (base < 0 || blocks.length === 0) return [];
  const lives = frame.welds.flatMap((weld): WeldLife[] => {
    const row = detailCategories.find((one) => one.detail === (detail ?? DETAILS[weld.kind]));
    const line = frame.draft.lines.get(weld.line);
    if (!row || !line) return [];
    const spectra = spectraAround({ frame, results, weld, base, blocks });
    const curve = stressLife(row.category, row.slope, 'en-1993-1-9');
    const [worst] = spectra
      .map((spectrum) => ({ spectrum, damage: minerDamage(curve, spectrum) }))
      .sort((a, b) => b.damage - a.damage);
    return worst ? [lifeOf(frame, weld, row, worst.spectrum)] : [];
  });
  return lives.sort((a, b) => a.life.low - b.life.low);
}

type Spectrum = readonly { readonly range: Pressure; readonly cycles: number }[];

/** Ranges of a kilometer at each place round the weld, for every member that ends there. */
function spectraAround(of: {
  readonly frame: BikeFrame;
  readonly results: FrameResults;
  readonly weld: WeldSpot;
  readonly base: number;
  readonly blocks: readonly (SpectrumBlock & { readonly c: number })[];
}): readonly Spectrum[] {
  const { frame, results, weld, base, blocks } = of;
  const { outside, wall } = frame.draft.lines.get(weld.line)!.stock;
  const section = stressSection(outside, wall);
  const inset = weld.kind === 'cope' ? (frame.draft.lines.get(weld.with)?.stock.outside ?? 0) / 2 : 0;
  return endsAt(frame, weld).flatMap(([member, atStart]) => {
    const at = (c: number) => stressAt(results.solutions[c]!, { results, member, atStart, inset }, section);
    const rest = at(base);
    const moved = blocks.map((block) => at(block.c));
    return rest.map((still, k) =>
      blocks.map((block, b) => ({
        range: (block.scale * Math.abs(moved[b]![k]! - still)) as Pressure,
        cycles: block.perKilometer,
      })),
    );
  });
}

function lifeOf(
  frame: BikeFrame,
  weld: WeldSpot,
  { detail, category, slope, source }: (typeof detailCategories)[number],
  spectrum: Spectrum,
): WeldLife {
  const partial = fatiguePartialFactors.find(
    ({ method, consequence }) => method === 'damage-tolerant' && consequence === 'high',
  );
  const estimate = fatigueEstimate({
    category,
    slope,
    rule: 'en-1993-1-9',
    partialFactor: partial?.factor ?? 1,
    spectrum,
  });
  const place = frame.draft.places.get(weld.node);
  return {
    part: weld.line,
    with: weld.with,
    node: weld.node,
    where: `weld to "${weld.with}", ${Math.round((place?.at ?? 0) * 1000)} mm along`,
    detail,
    category,
    estimate,
    range: spectrum.reduce((most, { range }) => Math.max(most, range), 0),
    life: { low: estimate.low.repeats, middle: estimate.repeats, high: estimate.high.repeats },
    source,
  };
}

/** Members of the weld's tube that end at its node, and whether they start there. */
function endsAt(frame: BikeFrame, weld: WeldSpot): (readonly [number, boolean])[] {
  return frame.model.members.flatMap(({ id, from, to }, i): (readonly [number, boolean])[] => {
    if (id.split('#')[0] !== weld.line) return [];
    if (from === weld.node) return [[i, true]];
    return to === weld.node ? [[i, false]] : [];
  });
}

function stressAt(
  { memberForces, memberLoads }: FrameSolution,
  of: {
    readonly results: FrameResults;
    readonly member: number;
    readonly atStart: boolean;
    readonly inset: number;
  },
  section: StressSection,
): readonly number[] {
  const { member, atStart } = of;
  const { length } = of.results.assembled.elements[member]!;
  const inset = Math.min(of.inset, length / 2);
  const x = atStart ? inset : length - inset;
  const ends = memberForces.subarray(member * 12, member * 12 + 12);
  const load = memberLoads.subarray(member * 3, member * 3 + 3);
  const f = sectionForces(ends, load, x);
  return normalStressAround(section, f.normal, f.momentY, f.momentZ);
}
