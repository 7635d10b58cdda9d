import type { FlatPattern } from '../../../../plates/index.ts';
import { materialStrength } from '../../../../standards/index.ts';
import {
  type AllowedStress,
  type CutPlate,
  glancedShare,
  type LoadedCut,
  type PlateLoads,
  worstCut,
} from '../../../plates/index.ts';
import type { LoadCase } from '../../loads/caseTypes.ts';
import type { JointInput } from '../joints/jointInput.ts';
import type { UtilizationRow } from '../utilizationRow.ts';
import { anchorRows } from './anchors.ts';
import { axlePlateStudy } from './axlePlateStudy.ts';
import { caliperStudy } from './caliperStudy.ts';
import { enginePlateStudy } from './enginePlateStudy.ts';
import { footBoltRows } from './footBolts.ts';
import { ownLoadStudy } from './ownLoadStudy.ts';
import { type PlacedPlate, placedPlates } from './plateAxes.ts';
import { loadsByPlate, plateBodies } from './plateBodies.ts';
import { isStudied, type NotStudied, type PlateStudy } from './study.ts';

/** What was found of plates, and which were left out. */
export interface PlateRows {
  readonly rows: readonly UtilizationRow[];
  readonly notChecked: readonly string[];
}

/** Cuts are first looked at one in so many, to find the cases that count. */
const GLANCE = 11;
/** Cases whose loads are smaller than this share of the largest, in the plane and out of it, are not looked at. */
const LARGE = 0.15;
/** Cases that come this near to the worst at a glance are looked at in full, but no more than so many. */
const NEAR = 0.7;
const CLOSER = 3;

/** Plates in bending by straight cuts, anchors of caliper brackets, bolts of feet; the worst of each over cases and copies. */
export function plateRows(input: JointInput): PlateRows {
  const { bodies, owners } = plateBodies(input.frame);
  const cases = loadsByPlate(input.cases, owners);
  const context = { input, bodies, cases };
  const left: NotStudied[] = [];
  const studies = new Map<FlatPattern, PlateStudy[]>();
  for (const plate of placedPlates(input.patterns)) {
    const study = studyOf(context, plate);
    if (isStudied(study)) studies.set(plate.pattern, [...(studies.get(plate.pattern) ?? []), study]);
    else left.push(study);
  }
  const rows = [...studies].flatMap(([pattern, copies]) => stressRow(input, pattern, copies) ?? []);
  return {
    rows: [...rows, ...anchorRows(input), ...footBoltRows(input, cases)],
    notChecked: [...notChecked(left), ...besideBrackets(context)],
  };
}

interface Context {
  readonly input: JointInput;
  readonly bodies: ReturnType<typeof plateBodies>['bodies'];
  readonly cases: ReturnType<typeof loadsByPlate>;
}

function studyOf({ input, bodies, cases }: Context, plate: PlacedPlate): PlateStudy | NotStudied {
  const { pattern } = plate;
  switch (pattern.recipe) {
    case 'engine-plate':
      return enginePlateStudy(input, plate, cases);
    case 'caliper-bracket':
      return caliperStudy(input, plate);
    case 'gusset':
      return { plate: pattern.id, why: 'it shares its load with the tubes that it joins' };
    case 'axle-plate': {
      const body = bodies.get(plate.node);
      return body
        ? axlePlateStudy(input, plate, body, cases)
        : { plate: pattern.id, why: 'it is not in the model' };
    }
    default:
      return ownLoadStudy(input, plate, cases);
  }
}

/** A copy of a plate in a case, and its share of the allowed stress at a glance. */
interface Glanced {
  readonly study: PlateStudy;
  readonly one: LoadCase;
  readonly loads: PlateLoads;
  readonly share: number;
}

/** Copies and cases by a first glance, then the worst few in full. */
function stressRow(
  input: JointInput,
  pattern: FlatPattern,
  copies: readonly PlateStudy[],
): UtilizationRow | undefined {
  const cuts = copies[0]!.makeCuts();
  const material = materialStrength(pattern.material);
  const { yieldFactor } = input.settings;
  const allowed: AllowedStress = {
    plain: material.yield / yieldFactor,
    welded: material.weldedYield / yieldFactor,
  };
  const glanced = copies.flatMap((study) => glance(input, study, cuts, allowed));
  glanced.sort((a, b) => b.share - a.share);
  let worst: { readonly of: Glanced; readonly cut: LoadedCut } | undefined;
  for (const of of glanced.slice(0, CLOSER)) {
    if (of.share < NEAR * glanced[0]!.share) break;
    const cut = worstCut(cuts, of.loads, allowed);
    if (cut && cut.share > (worst?.cut.share ?? -1)) worst = { of, cut };
  }
  return worst && rowOf(worst.of, worst.cut, allowed);
}

function glance(
  { cases }: JointInput,
  study: PlateStudy,
  cuts: CutPlate,
  allowed: AllowedStress,
): readonly Glanced[] {
  const loaded = cases.flatMap((one, c) => {
    const loads = study.loads(c);
    return loads ? [{ one, loads, sizes: sizesOf(loads, study.plate.pattern) }] : [];
  });
  const most = [0, 1].map((k) => Math.max(...loaded.map(({ sizes }) => sizes[k]!)));
  return loaded.flatMap(({ one, loads, sizes }): Glanced[] => {
    if (sizes[0] < LARGE * most[0]! && sizes[1] < LARGE * most[1]!) return [];
    return [{ study, one, loads, share: glancedShare(cuts, loads, allowed, GLANCE) }];
  });
}

/** Rough size of the loads in the plate's plane and out of it [N], moments by the plate's size. */
function sizesOf({ points }: PlateLoads, { area }: FlatPattern): readonly [number, number] {
  const size = Math.sqrt(area);
  let flat = 0;
  let out = 0;
  for (const { force, moment } of points) {
    flat += Math.hypot(force.x, force.y) + (moment ? Math.abs(moment.z) / size : 0);
    out += Math.abs(force.z) + (moment ? Math.hypot(moment.x, moment.y) / size : 0);
  }
  return [flat, out];
}

function rowOf({ study, one }: Glanced, cut: LoadedCut, allowed: AllowedStress): UtilizationRow {
  const { pattern, hand } = study.plate;
  const side = pattern.pair ? `${hand} one, ` : '';
  const { isAtWeld } = cut.section;
  return {
    part: pattern.id,
    check: 'plateStress',
    case: one.id,
    where: `${side}${study.where(cut.section)}${isAtWeld ? ', beside a weld' : ''}`,
    quantity: 'stress across the plate',
    value: cut.stress.equivalent,
    limit: isAtWeld ? allowed.welded : allowed.plain,
    kind: 'pressure',
    utilization: cut.share,
    note: study.note,
    source: study.source,
  };
}

function notChecked(left: readonly NotStudied[]): readonly string[] {
  return [...new Set(left.map(({ plate, why }) => `plate "${plate}" in bending: ${why}`))];
}

/** An axle plate beside a bracket that hangs on the same axle is left out while that brake is on. */
function besideBrackets({ input, bodies }: Context): readonly string[] {
  return placedPlates(input.patterns)
    .filter(
      ({ pattern, node }) => pattern.recipe === 'axle-plate' && (bodies.get(node)?.plates.length ?? 0) > 1,
    )
    .map(
      ({ pattern }) =>
        `plate "${pattern.id}" in bending while the rear brake is on: another plate hangs on its axle, and which of them takes the moment can not be told`,
    );
}
