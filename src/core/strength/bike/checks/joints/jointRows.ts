import type { Bike } from '../../../../bike/index.ts';
import type { Build } from '../../../../build/index.ts';
import type { FlatPattern } from '../../../../plates/index.ts';
import type { Force, Length, Pressure, SourceRef, Torque } from '../../../../quantity/index.ts';
import {
  boltClass,
  findThread,
  materialStrength,
  slipFrictions,
  slipHoles,
} from '../../../../standards/index.ts';
import { groupForces, type InPlane } from '../../../bolts/boltGroup.ts';
import { plateBearing, preloadOfTorque, slipLoad } from '../../../bolts/boltJoint.ts';
import { type FrameSolution, sectionForces } from '../../../frame/index.ts';
import { allowableBase, allowableThroat, fillerTensile } from '../../../welds/weldAllowable.ts';
import { throatOf, type WeldLine, type WeldLoad, worstThroatStress } from '../../../welds/weldGroup.ts';
import type { LoadSettings } from '../../loads/assumptions.ts';
import type { LoadCase } from '../../loads/loadCases.ts';
import type { BikeFrame } from '../../model/bikeFrame.ts';
import { platePoint } from '../../model/contact.ts';
import type { FrameResults, UtilizationRow } from '../frameStrength.ts';

export interface JointInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly patterns: readonly FlatPattern[];
  readonly frame: BikeFrame;
  readonly settings: LoadSettings;
  readonly cases: readonly LoadCase[];
  readonly results: FrameResults;
}

const GRAVITY = 9.80665;
/** Preload left out of the file: torque for 75 % of proof, plated threads. @source shigley-9, section 8-9 */
const PROOF_SHARE = 0.75;
const TORQUE_FACTOR = 0.2;

/** Bolts, brackets and welds under the cases that load them most. */
export function jointRows(input: JointInput): readonly UtilizationRow[] {
  return [
    ...engineBolts(input),
    ...caliperBolts(input),
    ...axleSlots(input),
    ...footWelds(input),
    ...tubeWelds(input),
  ];
}

interface BoltSetting {
  readonly preload: number;
  readonly friction: number;
  readonly shearArea: number;
  readonly yield: number;
  readonly diameter: number;
  readonly source: SourceRef;
}

/** Preload and strength of a bolt that a plate names; the file may say grade, torque and faces. */
function boltOf({ build }: JointInput, plate: string, size: string): BoltSetting | undefined {
  const thread = findThread(size);
  if (!thread.ok) return undefined;
  const given = build.loads?.bolts?.[plate];
  const inch = thread.value.system === 'inch';
  const grade = boltClass(given?.grade ?? (inch ? 'grade 5' : '8.8'), thread.value.major);
  if (!grade.ok) return undefined;
  const { major, stressArea } = thread.value;
  const preload = given?.torque
    ? preloadOfTorque(given.torque, TORQUE_FACTOR, major)
    : PROOF_SHARE * grade.value.proof * stressArea;
  const friction =
    given?.friction ?? slipFrictions.find(({ name }) => name === 'painted-or-oily')?.value ?? 0.15;
  return {
    preload,
    friction,
    shearArea: stressArea,
    yield: grade.value.yield,
    diameter: major,
    source: grade.value.source,
  };
}

/** Engine and rail bolts hold the chain pull and the engine's own swing by friction alone. */
function engineBolts(input: JointInput): UtilizationRow[] {
  const { build, bike, patterns, cases, frame } = input;
  const plate = patterns.find((pattern) => pattern.recipe === 'engine-plate');
  const entry = plate ? build.plates[plate.id] : undefined;
  if (!plate || entry?.recipe !== 'engine-plate') return [];
  const groups = [
    {
      name: 'engine bolts',
      size: build.engine.mount.bolt,
      points: [...bike.engine.holes],
      slotted: entry.slotted ?? 'engine',
      is: 'engine',
    },
    {
      name: 'rail bolts',
      size: entry.rails.bolt,
      points: plate.openings
        .filter(({ id }) => id.startsWith('rail-'))
        .map(({ center }) => platePoint(plate, 0, center)),
      slotted: entry.slotted ?? 'engine',
      is: 'rails',
    },
  ];
  const engine = frame.bodies.find(({ id }) => id === 'engine');
  return groups.flatMap((group): UtilizationRow[] => {
    const bolt = boltOf(input, plate.id, group.size);
    if (!bolt || group.points.length === 0 || !engine) return [];
    const hole = group.slotted === group.is ? 'long-slot-along' : 'normal';
    const holeFactor = slipHoles.find(({ name }) => name === hole)?.value ?? 1;
    const worst = cases
      .filter(({ id }) => id === 'driving' || id === 'chain-pull')
      .map((one) => ({ one, share: slipShare(one, engine, group.points, bolt, holeFactor) }))
      .sort((a, b) => b.share.load - a.share.load)[0];
    if (!worst) return [];
    const { load, limit } = worst.share;
    return [
      {
        part: plate.id,
        case: worst.one.id,
        where: `${group.name}${hole === 'normal' ? '' : ', slotted'}`,
        quantity: 'pull on the most loaded bolt against slip',
        value: load,
        limit,
        kind: 'force',
        utilization: load / limit,
        source: { key: 'en-1993-1-8', where: 'section 3.9, ks of table 3.6, without its partial factor' },
      },
    ];
  });
}

/** In the plane of the plate: the pull as it lies off the bolts' middle; its lift by lever loosens the clamp. */
function slipShare(
  one: LoadCase,
  engine: {
    readonly mass: number;
    readonly center: { readonly x: number; readonly y: number; readonly z: number };
  },
  points: readonly { readonly x: number; readonly y: number; readonly z: number }[],
  bolt: BoltSetting,
  holeFactor: number,
): { readonly load: number; readonly limit: number } {
  const pulls = one.applied.filter(({ what }) => what.endsWith(' on engine'));
  const bolts = points.map(({ x, y }): InPlane<Length> => [x as Length, y as Length]);
  const base = points.reduce((sum, { z }) => sum + z, 0) / points.length;
  const middle = points.reduce((sum, { x }) => sum + x, 0) / points.length;
  const each = points.map(() => [0, 0] as [number, number]);
  let tilt = 0;
  let lift = -engine.mass * GRAVITY;
  for (const { force, at } of pulls) {
    groupForces(bolts, [force.x as Force, force.y as Force], [at.x as Length, at.y as Length]).forEach(
      ([x, y], i) => {
        each[i]![0] += x;
        each[i]![1] += y;
      },
    );
    tilt += (at.z - base) * force.x - (at.x - middle) * force.z;
    lift += force.z;
  }
  const reach = points.reduce((sum, { x }) => sum + (x - middle) ** 2, 0);
  const far = Math.max(...points.map(({ x }) => Math.abs(x - middle)));
  const pull = Math.max(0, lift / points.length + (reach > 0 ? (Math.abs(tilt) * far) / reach : 0));
  const clamp = Math.max(0, bolt.preload - pull) as Force;
  const limit = slipLoad({ clamp, friction: bolt.friction, faces: 1, holeFactor });
  return { load: Math.max(...each.map(([x, y]) => Math.hypot(x, y))), limit };
}

/** Caliper bolts take the brake's torque by shear, as if the faces did not hold. */
function caliperBolts(input: JointInput): UtilizationRow[] {
  const { build, cases, bike, settings, patterns } = input;
  return (['front', 'rear'] as const).flatMap((wheel): UtilizationRow[] => {
    const brake = build.brakes[wheel];
    const one = cases.find(({ id }) => id === `braking-${wheel}`);
    if (brake?.kind !== 'disc' || !one) return [];
    const push = one.applied.find(({ what }) => what === `${wheel} wheel on the ground`);
    const torque = Math.abs(push?.force.x ?? 0) * bike.layout.fitted[wheel].radius;
    const { caliper, disc } = brake;
    const pad = disc.diameter / 2 - (caliper.padHeight ?? 0.2 * disc.diameter) / 2;
    const drag = torque / pad;
    const half = caliper.mountSpacing / 2;
    const forces = groupForces(
      [
        [half as Length, caliper.lugRadius as Length],
        [-half as Length, caliper.lugRadius as Length],
      ],
      [drag as Force, 0 as Force],
      [0 as Length, pad as Length],
    );
    const most = Math.max(...forces.map((force) => Math.hypot(...force)));
    const area = (Math.PI / 4) * (0.85 * caliper.bolt) ** 2;
    const grade = boltClass('8.8', caliper.bolt);
    if (!grade.ok) return [];
    const shear = (0.577 * grade.value.yield) / settings.yieldFactor;
    const rows: UtilizationRow[] = [
      {
        part: `brakes.${wheel}`,
        case: one.id,
        where: 'caliper bolts',
        quantity: 'shear at the thread, class 8.8',
        value: most / area,
        limit: shear,
        kind: 'pressure',
        utilization: most / area / shear,
        source: { key: 'shigley-9', where: 'section 8-12, eccentric shear' },
      },
    ];
    const bracket = patterns.find(
      ({ id }) => build.plates[id]?.recipe === 'caliper-bracket' && bracketOf(build, id) === wheel,
    );
    if (!bracket) return rows;
    const edge = caliper.bolt * 1.5;
    const stress = plateBearing({
      load: most as Force,
      diameter: caliper.bolt,
      hole: caliper.bolt,
      thickness: bracket.thickness as Length,
      edge: edge as Length,
    });
    const plain = materialStrength(bracket.material).yield / settings.yieldFactor;
    return [
      ...rows,
      {
        part: bracket.id,
        case: one.id,
        where: 'at a caliper bolt',
        quantity: 'pressure on the hole',
        value: stress.bearing,
        limit: plain,
        kind: 'pressure',
        utilization: stress.bearing / plain,
        source: { key: 'shigley-9', where: 'section 8-12, bearing' },
      },
    ];
  });
}

function bracketOf(build: Build, id: string): string | undefined {
  const entry = build.plates[id];
  return entry?.recipe === 'caliper-bracket' ? entry.brake : undefined;
}

/** Pressure of the axle on its slots, and tearing out of the plate beyond them. */
function axleSlots({ build, patterns, frame, cases, settings }: JointInput): UtilizationRow[] {
  const axle = frame.draft.lines.get('rearAxle');
  return patterns.flatMap((pattern): UtilizationRow[] => {
    const entry = build.plates[pattern.id];
    if (entry?.recipe !== 'axle-plate' || (entry.shaft ?? 'rearAxle') !== 'rearAxle' || !axle) return [];
    const worst = cases
      .map((one) => ({ one, load: axleLoad(frame, one) }))
      .sort((a, b) => b.load - a.load)[0];
    if (!worst) return [];
    const diameter = axle.stock.outside as Length;
    const stress = plateBearing({
      load: worst.load as Force,
      diameter,
      hole: (diameter + (entry.clearance ?? 5e-4)) as Length,
      thickness: pattern.thickness as Length,
      edge: (entry.margin + diameter / 2) as Length,
    });
    const material = materialStrength(pattern.material);
    const base = { part: pattern.id, case: worst.one.id, kind: 'pressure' as const };
    const allowed = material.yield / settings.yieldFactor;
    return [
      {
        ...base,
        where: 'slot of the axle',
        quantity: 'pressure on the slot',
        value: stress.bearing,
        limit: allowed,
        utilization: stress.bearing / allowed,
        source: { key: 'shigley-9', where: 'section 8-12, bearing' },
      },
      {
        ...base,
        where: 'beyond the slot',
        quantity: 'shear by tearing out',
        value: stress.tearOut,
        limit: 0.577 * allowed,
        utilization: stress.tearOut / (0.577 * allowed),
        source: { key: 'shigley-9', where: 'section 8-12, tear-out' },
      },
    ];
  });
}

/** Larger of the two hub forces of the rear wheel [N]. */
function axleLoad(frame: BikeFrame, one: LoadCase): number {
  return Math.max(
    ...frame.wheels.rear.hub.map((node) => {
      const sum = { x: 0, z: 0 };
      for (const load of one.balanced.loads.nodes ?? []) {
        if (load.node !== node || !load.force) continue;
        sum.x += load.force.x;
        sum.z += load.force.z;
      }
      return Math.hypot(sum.x, sum.z);
    }),
  );
}

/** Fillets along both sides of a plate's foot, under the force of its bearing. */
function footWelds(input: JointInput): UtilizationRow[] {
  const { build, patterns, frame, cases, settings } = input;
  return patterns.flatMap((pattern): UtilizationRow[] => {
    const entry = build.plates[pattern.id];
    if (entry?.recipe !== 'countershaft-plate' && entry?.recipe !== 'outboard-support') return [];
    if ((entry.foot.bolts ?? 0) > 0) return [];
    const found = frame.bearings
      .filter(({ plate }) => plate === pattern.id)
      .flatMap((bearing) =>
        cases.flatMap((one) =>
          (one.balanced.loads.nodes ?? [])
            .filter((load) => load.node === bearing.node && load.force !== undefined)
            .map((load) => ({ one, force: load.force! })),
        ),
      )
      .sort((a, b) => Math.hypot(b.force.x, b.force.z) - Math.hypot(a.force.x, a.force.z))[0];
    if (!found) return [];
    const leg = legOf(input, pattern.thickness);
    const half = entry.foot.width / 2;
    const side = pattern.thickness / 2;
    // The weld's plane is level: its y runs along the bike, its z across; its x stands up out of the rail.
    const lines: WeldLine[] = [side, -side].map((z) => ({
      from: [-half as Length, z as Length],
      to: [half as Length, z as Length],
    }));
    const load: WeldLoad = {
      force: [found.force.z as Force, found.force.x as Force, 0 as Force],
      at: [entry.foot.height as Length, -(entry.foot.forward ?? 0) as Length, 0 as Length],
      moment: [0 as Torque, 0 as Torque, 0 as Torque],
    };
    return [
      weldRow(input, {
        part: pattern.id,
        where: 'fillets at its foot',
        one: found.one,
        lines,
        leg,
        load,
        yield: materialStrength(pattern.material).weldedYield,
        settings,
      }),
    ];
  });
}

const legOf = ({ build }: JointInput, thinner: number): Length => (build.loads?.weldLeg ?? thinner) as Length;

function weldRow(
  _input: JointInput,
  of: {
    readonly part: string;
    readonly where: string;
    readonly one: LoadCase;
    readonly lines: readonly WeldLine[];
    readonly leg: Length;
    readonly load: WeldLoad;
    readonly yield: number;
    readonly settings: LoadSettings;
  },
): UtilizationRow {
  const stress = worstThroatStress(of.lines, throatOf(of.leg), of.load, 'all-shear');
  const filler = fillerTensile(of.settings.filler);
  const throat = allowableThroat(filler.ok ? filler.value : (482e6 as Pressure));
  // Stress on the leg is that in the throat over √2.
  const base = allowableBase(of.yield as Pressure) * Math.SQRT2;
  const limit = Math.min(throat, base);
  return {
    part: of.part,
    case: of.one.id,
    where: `${of.where}, leg ${(of.leg * 1000).toFixed(1)} mm`,
    quantity: throat <= base ? 'throat stress, filler governs' : 'throat stress, base metal governs',
    value: stress.resultant,
    limit,
    kind: 'pressure',
    utilization: stress.resultant / limit,
    source: { key: 'shigley-9', where: 'tables 9-4 and 9-6, all stress taken as shear' },
  };
}

/** Fillets all round coped and landed tube ends, leg as the wall, under the end forces of the member. */
function tubeWelds(input: JointInput): UtilizationRow[] {
  const { bike, frame, results, cases, settings } = input;
  const best = new Map<string, UtilizationRow>();
  for (const weld of frame.welds) {
    const line = frame.draft.lines.get(weld.line);
    const tube = bike.tubes.find(({ id }) => id === weld.line);
    if ((weld.kind !== 'cope' && weld.kind !== 'landing') || !line || !tube) continue;
    const member = frame.model.members.findIndex(
      ({ id, from, to }) => id.startsWith(`${weld.line}#`) && (from === weld.node || to === weld.node),
    );
    if (member < 0) continue;
    const atStart = frame.model.members[member]!.from === weld.node;
    const trunk = weld.kind === 'cope' ? (frame.draft.lines.get(weld.with)?.stock.outside ?? 0) / 2 : 0;
    const { length } = results.assembled.elements[member]!;
    const inset = Math.min(trunk, length / 2);
    const x = atStart ? inset : length - inset;
    const found = cases
      .map((one, c) => ({
        one,
        load: endLoad(results.solutions[c]!, member, x),
        radius: line.stock.outside / 2,
      }))
      .sort((a, b) => demand(b.load, b.radius) - demand(a.load, a.radius))[0];
    if (!found) continue;
    const row = weldRow(input, {
      part: weld.line,
      where: `weld round the tube at "${weld.with}"`,
      one: found.one,
      lines: [{ center: [0 as Length, 0 as Length], radius: (line.stock.outside / 2) as Length }],
      leg: legOf(input, line.stock.wall),
      load: found.load,
      yield: materialStrength(tube.material).weldedYield,
      settings,
    });
    if (row.utilization > (best.get(weld.line)?.utilization ?? -1)) best.set(weld.line, row);
  }
  return [...best.values()];
}

function endLoad({ memberForces, memberLoads }: FrameSolution, member: number, x: number): WeldLoad {
  const f = sectionForces(
    memberForces.subarray(member * 12, member * 12 + 12),
    memberLoads.subarray(member * 3, member * 3 + 3),
    x,
  );
  return {
    force: [f.normal as Force, f.shearY as Force, f.shearZ as Force],
    at: [0 as Length, 0 as Length, 0 as Length],
    moment: [f.torque as Torque, f.momentY as Torque, f.momentZ as Torque],
  };
}

/** Rough order of the load on a round weld, to pick the case that is worked out. */
const demand = ({ force, moment }: WeldLoad, radius: number): number =>
  Math.hypot(...force) / 2 + Math.hypot(moment[0] / 2, moment[1], moment[2]) / radius;
