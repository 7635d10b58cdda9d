import type { Bike, MassPart, MassSummary } from '../../../bike/index.ts';
import { sumLumps } from '../../../bike/index.ts';
import type { Build } from '../../../build/index.ts';
import { distance3, type Point3 } from '../../../geometry/index.ts';
import type { FlatPattern } from '../../../plates/index.ts';
import { materialStrength } from '../../../standards/index.ts';
import type { FrameModel } from '../../frame/index.ts';
import type { LoadSettings } from '../loads/assumptions.ts';
import { ContactSearch, edgePoints, hangNodes, midpoint, platePoint, REACH } from './contact.ts';
import { type DraftLine, FrameDraft } from './draft.ts';
import { type AxleNodes, addAxle, addFront, axleDiameter, heldY } from './frontModel.ts';
import { nearestOnLine } from './nearest.ts';

/** What carries the mass or the load of a part. */
export type Carrier =
  | { readonly by: 'node'; readonly node: string }
  | { readonly by: 'wheel'; readonly wheel: 'front' | 'rear' }
  | { readonly by: 'spread'; readonly nodes: readonly string[] }
  | { readonly by: 'rider' };

/** A rigid part of the bike as the loads see it. */
export interface CarriedBody {
  readonly id: string;
  readonly mass: number;
  readonly center: Point3;
  readonly inertia: MassPart['inertia'];
  readonly carrier: Carrier;
}

/** Why a node is a weld, and of what kind. */
export interface WeldSpot {
  readonly node: string;
  /** The tube whose stress counts there. */
  readonly line: string;
  readonly kind: 'cope' | 'trunk' | 'landing' | 'plate';
  /** What is welded to it. */
  readonly with: string;
}

/** Something of the bike that the model could not take as drawn. */
export interface ModelFlaw {
  readonly rule: 'gap' | 'nothing-near' | 'mechanism' | 'refused';
  readonly part: string;
  /** [m] */
  readonly gap?: number;
  readonly reason: string;
}

export interface PlacedBearing {
  /** Item of the stack. */
  readonly item: string;
  readonly y: number;
  readonly node: string;
  /** Plate that holds it, where one is near. */
  readonly plate?: string;
}

/** The placed bike as a frame of beams with all that hangs on it. */
export interface BikeFrame {
  readonly model: FrameModel;
  readonly draft: FrameDraft;
  readonly bodies: readonly CarriedBody[];
  readonly welds: readonly WeldSpot[];
  readonly flaws: readonly ModelFlaw[];
  readonly wheels: { readonly front: AxleNodes; readonly rear: AxleNodes };
  readonly brakeNodes: { readonly front: string; readonly rear: string };
  readonly seats: readonly { readonly node: string; readonly weight: number }[];
  readonly pegs: readonly [string, string];
  readonly grips: readonly [string, string];
  readonly stand?: string;
  readonly engine: string;
  readonly bearings: readonly PlacedBearing[];
}

export interface FrameInput {
  readonly build: Build;
  readonly bike: Bike;
  readonly patterns: readonly FlatPattern[];
  readonly masses: MassSummary;
}

/** All that is found while the model is put together. */
interface Making extends FrameInput {
  readonly draft: FrameDraft;
  readonly frameLines: readonly DraftLine[];
  readonly search: ContactSearch;
  readonly welds: WeldSpot[];
  readonly flaws: ModelFlaw[];
  /** Node of a placed plate by `id.hand`. */
  readonly plates: Map<string, string>;
}

/**
 * Tubes split at their joints and bends, neck, fork and axles as members; plates, clamps, engine and bars as stiff
 * bodies; held at the axles in six directions that add no strain.
 * @param longest cuts members to this length, for buckling and vibration [m]
 */
export function bikeFrame(input: FrameInput, settings: LoadSettings, longest?: number): BikeFrame {
  const { build, bike, masses } = input;
  const draft = new FrameDraft();
  const frameLines = addTubes(draft, build, bike, masses);
  const making: Making = {
    ...input,
    draft,
    frameLines,
    search: new ContactSearch(draft, frameLines),
    welds: [],
    flaws: [],
    plates: new Map(),
  };
  tieCopes(making);
  const { front, upperClamp, legs } = addFront(draft, build, bike, masses, settings);
  const rear = addRear(making);
  addPlates(making, legs);
  const engine = addEngine(making);
  const bearings = addBearings(making);
  const rider = addContacts(making, upperClamp);
  draft.support(rear.held[0], ['ux', 'uy', 'uz']);
  draft.support(rear.held[1], ['ux', 'uz']);
  const axle = draft.lines.get('frontAxle')!;
  draft.support(draft.station(axle, axle.length / 2), ['uz']);
  const places = { front, rear, upperClamp, legs, engine, bearings, ...rider };
  const bodies = carriedBodies(making, places);
  if (longest !== undefined) draft.refine(longest);
  for (const body of bodies) addLump(draft, body, places);
  const side = (wheel: 'front' | 'rear'): 0 | 1 => (build.brakes[wheel]?.side === 'right' ? 1 : 0);
  return {
    model: draft.model(),
    draft,
    bodies,
    welds: making.welds,
    flaws: making.flaws,
    wheels: { front, rear },
    brakeNodes: { front: front.held[side('front')], rear: rear.held[side('rear')] },
    engine,
    bearings,
    ...rider,
  };
}

function addTubes(draft: FrameDraft, build: Build, bike: Bike, masses: MassSummary): DraftLine[] {
  const massOf = (id: string): number => masses.parts.find((part) => part.id === id)?.mass ?? 0;
  const tubes = bike.tubes.map((tube) => {
    const { elasticModulus, shearModulus } = materialStrength(tube.material);
    const { outside, wall } = tube;
    const mass = massOf(`tubes.${tube.id}`);
    return draft.addTube(
      tube.id,
      { outside, wall: Math.min(wall, outside / 2), elasticModulus, shearModulus, mass },
      tube.centerline,
    );
  });
  const { neckBottom, neckTop } = bike.layout.points;
  const { outside, wall } = build.steering.neck;
  const { elasticModulus, shearModulus } = materialStrength('mild-steel');
  const stock = { outside, wall: Math.min(wall, outside / 2), elasticModulus, shearModulus };
  const neck = draft.addStraight('neck', { ...stock, mass: massOf('steering.neck') }, neckBottom!, neckTop!);
  return [...tubes, neck];
}

/** A cope further from its trunk than this is not fitted round it [m]. */
const COPE_GAP = 5e-3;

function tieCopes({ bike, draft, welds, flaws }: Making): void {
  for (const tube of bike.tubes) {
    const line = draft.lines.get(tube.id)!;
    tube.ends.forEach((end, k) => {
      const node = draft.station(line, k === 0 ? 0 : line.length);
      const trunk = end.onto === undefined ? undefined : draft.lines.get(end.onto);
      if (end.joint !== 'cope' || !trunk) return;
      const near = nearestOnLine(trunk, draft.nodes.get(node)!);
      const onTrunk = draft.station(trunk, near.at);
      const reach = (trunk.stock.outside + line.stock.outside) / 2 + COPE_GAP;
      if (near.distance > reach)
        flaws.push({
          rule: 'gap',
          part: tube.id,
          gap: near.distance - reach,
          reason: `its ${k === 0 ? 'start' : 'end'} does not reach "${trunk.id}"; taken as joined to it`,
        });
      draft.tie(onTrunk, node);
      welds.push({ node, line: tube.id, kind: 'cope', with: trunk.id });
      welds.push({ node: onTrunk, line: trunk.id, kind: 'trunk', with: tube.id });
    });
  }
}

/** Overhang of plates that no stack places [m]. @source practice */
const SPACER = 0.03;

function addRear(making: Making): AxleNodes {
  const { build, bike, masses, patterns, draft } = making;
  const placed = patterns
    .filter((pattern) => pattern.recipe === 'axle-plate' && axleOf(build, pattern.id) === 'rearAxle')
    .flatMap((pattern) => pattern.placed.map((_, i) => platePoint(pattern, i, { x: 0, y: 0 }).y));
  const [most, least] = [Math.max(...placed), Math.min(...placed)];
  const half = build.wheels.rear.hub.width / 2 + SPACER;
  const ends =
    placed.length >= 2 && most > 0 && least < 0
      ? ([most, least] as const)
      : (heldY(bike, 'rearAxle', 'plate') ?? ([half, -half] as const));
  return addAxle(draft, bike, {
    shaft: 'rearAxle',
    diameter: axleDiameter(build, bike, 'rear'),
    hubWidth: build.wheels.rear.hub.width,
    mass: masses.parts.find((part) => part.id === 'shafts.rearAxle')?.mass ?? 0,
    ends,
  });
}

function axleOf(build: Build, plate: string): string | undefined {
  const entry = build.plates[plate];
  return entry?.recipe === 'axle-plate' ? (entry.shaft ?? 'rearAxle') : undefined;
}

/** Each placed plate becomes a stiff body with the tubes that it reaches. */
function addPlates(making: Making, legs: readonly [string, string]): void {
  const { build, draft, patterns, plates } = making;
  for (const pattern of patterns) {
    if (pattern.recipe === 'engine-plate') continue;
    pattern.placed.forEach(({ hand }, index) => {
      const key = `${pattern.id}.${hand}`;
      const node = draft.point(`plate:${key}`, platePoint(pattern, index, pattern.centroid));
      plates.set(key, node);
      const entry = build.plates[pattern.id];
      if (entry?.recipe === 'caliper-bracket') tieCaliper(making, entry.brake, node, legs);
      else if (entry?.recipe === 'axle-plate' && landPlate(making, pattern, index, node)) return;
      else tieContacts(making, pattern, index, node);
    });
  }
}

function tieCaliper(
  { build, draft }: Making,
  brake: 'front' | 'rear',
  node: string,
  legs: readonly [string, string],
): void {
  const axle = draft.lines.get('rearAxle')!;
  const right = build.brakes[brake]?.side === 'right';
  const held = brake === 'front' ? legs[right ? 1 : 0] : draft.station(axle, right ? axle.length : 0);
  draft.tie(held, node);
}

/** The axle plate holds the axle and the tube ends that land on it. */
function landPlate(making: Making, pattern: FlatPattern, index: number, node: string): boolean {
  const { build, bike, draft, welds } = making;
  const entry = build.plates[pattern.id];
  if (entry?.recipe !== 'axle-plate') return false;
  const right = pattern.placed[index]!.hand === 'right';
  const names = entry.landings.map(({ at }) => (right ? `${at}.right` : at));
  const ends = bike.tubes.flatMap((tube) =>
    tube.ends.flatMap((end, k) => (end.onto === undefined && names.includes(end.node) ? [{ tube, k }] : [])),
  );
  for (const { tube, k } of ends) {
    const line = draft.lines.get(tube.id)!;
    const end = draft.station(line, k === 0 ? 0 : line.length);
    draft.tie(node, end);
    welds.push({ node: end, line: tube.id, kind: 'landing', with: pattern.id });
  }
  const axle = (entry.shaft ?? 'rearAxle') === 'rearAxle' ? draft.lines.get('rearAxle') : undefined;
  if (axle) draft.tie(node, draft.station(axle, right ? axle.length : 0));
  return ends.length > 0;
}

function tieContacts(making: Making, pattern: FlatPattern, index: number, node: string): void {
  const { draft, search, welds, flaws } = making;
  const contact = search.of(
    footOf(making, pattern, edgePoints(pattern, index)),
    among(making, pattern, index),
  );
  if (!contact) {
    flaws.push({ rule: 'nothing-near', part: pattern.id, reason: 'there is no tube to hold it' });
    return;
  }
  draft.tie(...contact.nodes, node);
  tieGusseted(making, pattern, index, node);
  if (contact.gap > REACH)
    flaws.push({
      rule: 'gap',
      part: pattern.id,
      gap: contact.gap,
      reason: `it reaches no tube; taken as held by ${contact.lines.map((id) => `"${id}"`).join(' and ')}`,
    });
  for (const held of contact.nodes) {
    const place = draft.places.get(held);
    if (place) welds.push({ node: held, line: place.line, kind: 'plate', with: pattern.id });
  }
}

/** A plate that stands on a foot is joined there, not where another tube passes close by [m]. */
const FOOT_HEIGHT = 0.02;

function footOf({ build }: Making, pattern: FlatPattern, points: readonly Point3[]): readonly Point3[] {
  const recipe = build.plates[pattern.id]?.recipe;
  if (recipe !== 'countershaft-plate' && recipe !== 'outboard-support') return points;
  const lowest = Math.min(...points.map(({ z }) => z));
  return points.filter(({ z }) => z <= lowest + FOOT_HEIGHT);
}

/** Within a gusset the tube and its trunk are one: the tube's own stress begins at the toe. */
function tieGusseted(making: Making, pattern: FlatPattern, index: number, node: string): void {
  const { bike, draft } = making;
  const names = among(making, pattern, index) ?? [];
  for (const tube of bike.tubes.filter(({ id }) => names.includes(id)))
    tube.ends.forEach((end, k) => {
      if (end.onto === undefined || !names.includes(end.onto)) return;
      const line = draft.lines.get(tube.id)!;
      draft.tie(node, draft.station(line, k === 0 ? 0 : line.length));
    });
}

/** A gusset knows its two tubes; both copies keep to their own side. */
function among({ build }: Making, pattern: FlatPattern, index: number): readonly string[] | undefined {
  const entry = build.plates[pattern.id];
  if (entry?.recipe !== 'gusset') return undefined;
  const right = pattern.placed[index]!.hand === 'right';
  return entry.between.map((id) => (right && id !== 'neck' ? `${id}.right` : id));
}

/** The engine on its plate as one stiff body, held where the rail bolts are. */
function addEngine(making: Making): string {
  const { bike, masses, draft, patterns, search, flaws, welds } = making;
  const center = masses.parts.find((part) => part.id === 'engine')?.center ?? bike.engine.base;
  const engine = draft.point('engine', center);
  const plate = patterns.find((pattern) => pattern.recipe === 'engine-plate' && pattern.placed.length > 0);
  const rails = plate?.openings.filter(({ id }) => id.startsWith('rail-')) ?? [];
  const points = plate
    ? rails.map(({ center: at }) => platePoint(plate, 0, at))
    : bike.engine.holes.map((hole) => hole);
  for (const point of points) {
    const contact = search.of([point]);
    if (!contact) continue;
    draft.tie(engine, ...contact.nodes);
    for (const held of contact.nodes) {
      const place = draft.places.get(held);
      if (place) welds.push({ node: held, line: place.line, kind: 'plate', with: plate?.id ?? 'engine' });
    }
    if (contact.gap > REACH)
      flaws.push({
        rule: 'gap',
        part: plate?.id ?? 'engine',
        gap: contact.gap,
        reason: `a bolt of it meets no tube; taken as held by ${contact.lines.map((id) => `"${id}"`).join(' and ')}`,
      });
  }
  return engine;
}

/** A bearing further from every plate of its shaft than this hangs in the air [m]. @source practice */
const BEARING_REACH = 0.04;

/** Bearings of shafts between engine and wheel, each with the plate beside it. */
function addBearings(making: Making): PlacedBearing[] {
  const { build, bike, draft, patterns, plates, flaws } = making;
  const holders = patterns.flatMap((pattern) => {
    const entry = build.plates[pattern.id];
    if (entry?.recipe !== 'countershaft-plate' && entry?.recipe !== 'outboard-support') return [];
    return pattern.placed.map(({ hand }, i) => ({
      id: pattern.id,
      shaft: entry.shaft ?? 'countershaft',
      y: platePoint(pattern, i, { x: 0, y: 0 }).y,
      node: plates.get(`${pattern.id}.${hand}`)!,
    }));
  });
  return Object.values(bike.stacks)
    .filter(({ shaft }) => shaft !== 'rearAxle' && shaft !== 'frontAxle' && shaft !== 'engine')
    .flatMap(({ shaft, items }) =>
      items
        .filter((item) => item.kind === 'bearing' && Number.isFinite(item.left + item.right))
        .map((item): PlacedBearing => {
          const y = (item.left + item.right) / 2;
          const holder = holders
            .filter((one) => one.shaft === shaft)
            .sort((a, b) => Math.abs(a.y - y) - Math.abs(b.y - y))[0];
          const near = holder && Math.abs(holder.y - y) <= BEARING_REACH ? holder : undefined;
          const node = draft.point(`bearing:${shaft}.${item.id}`, { ...bike.shafts[shaft]!, y });
          if (near) draft.tie(near.node, node);
          else hang(making, node, `bearing ${item.id}`, flaws);
          return { item: item.id, y, node, ...(near ? { plate: near.id } : {}) };
        }),
    );
}

/** Ties a node to the tube nearest to it. */
function hang({ draft, frameLines }: Making, node: string, part: string, flaws: ModelFlaw[]): void {
  const contact = hangNodes(draft, frameLines, draft.nodes.get(node)!, 0);
  if (!contact) {
    flaws.push({ rule: 'nothing-near', part, reason: 'there is no tube to hold it' });
    return;
  }
  draft.tie(contact.nodes[0]!, node);
  flaws.push({
    rule: 'gap',
    part,
    gap: contact.gap,
    reason: `no plate holds it; taken as held by "${contact.lines[0]}"`,
  });
}

/** Seat mounts, pegs, grips and stand: where the rider and the ground meet the frame. */
function addContacts(making: Making, upperClamp: string) {
  const { bike, draft } = making;
  const { places } = bike.layout;
  const mirror = (point: Point3): Point3 => ({ ...point, y: -point.y });
  const peg = draft.point('peg.left', places.peg);
  const pegRight = draft.point('peg.right', mirror(places.peg));
  holdBy(making, 'peg-tab', peg, 'left');
  holdBy(making, 'peg-tab', pegRight, 'right');
  const grips = [
    draft.point('grip.left', places.grip),
    draft.point('grip.right', mirror(places.grip)),
  ] as const;
  draft.tie(upperClamp, ...grips);
  const stand = places.stand ? draft.point('stand', places.stand) : undefined;
  if (stand) holdBy(making, 'stand-tab', stand, 'left');
  return {
    seats: seatNodes(making),
    pegs: [peg, pegRight] as const,
    grips,
    ...(stand ? { stand } : {}),
  };
}

/** By the tab of that recipe and hand, or the nearest tube. */
function holdBy(making: Making, recipe: string, node: string, hand: 'left' | 'right'): void {
  const { draft, patterns, plates } = making;
  const tab = patterns
    .filter((pattern) => pattern.recipe === recipe)
    .map((pattern) => plates.get(`${pattern.id}.${hand}`))
    .filter((held) => held !== undefined)
    .sort(
      (a, b) =>
        distance3(draft.nodes.get(a)!, draft.nodes.get(node)!) -
        distance3(draft.nodes.get(b)!, draft.nodes.get(node)!),
    )[0];
  if (tab) draft.tie(tab, node);
  else hang(making, node, node, making.flaws);
}

/** The seat rests on its mounts like a plank on two trestles; without mounts on the tubes below it. */
function seatNodes(making: Making): { readonly node: string; readonly weight: number }[] {
  const { bike, draft, frameLines, patterns, plates, flaws } = making;
  const { seat } = bike.layout.places;
  const mount = (recipe: string) =>
    patterns.filter((one) => one.recipe === recipe).map(({ id }) => plates.get(`${id}.center`))[0];
  const [front, rear] = [mount('seat-mount-front'), mount('seat-mount-rear')];
  if (front && rear) {
    const [a, b] = [draft.nodes.get(front)!.x, draft.nodes.get(rear)!.x];
    const share = Math.min(Math.max((seat.x - b) / (a - b), 0.05), 0.95);
    return [
      { node: front, weight: share },
      { node: rear, weight: 1 - share },
    ];
  }
  const contact = hangNodes(draft, frameLines, seat, 0.1);
  if (!contact) {
    flaws.push({ rule: 'nothing-near', part: 'seat', reason: 'there is no tube to hold it' });
    return [];
  }
  return contact.nodes.map((node) => ({ node, weight: 1 / contact.nodes.length }));
}

interface Places {
  readonly front: AxleNodes;
  readonly rear: AxleNodes;
  readonly upperClamp: string;
  readonly legs: readonly [string, string];
  readonly engine: string;
  readonly bearings: readonly PlacedBearing[];
  readonly seats: readonly { readonly node: string }[];
  readonly pegs: readonly [string, string];
  readonly grips: readonly [string, string];
}

/** Parts whose mass is in the lines of the model. */
const isLine = (id: string): boolean =>
  id.startsWith('tubes.') ||
  ['steering.neck', 'steering.fork', 'shafts.rearAxle', 'shafts.frontAxle'].includes(id);

function carriedBodies(making: Making, places: Places): CarriedBody[] {
  const { masses, draft } = making;
  const lumps = masses.parts.filter((part) => !isLine(part.id) && part.mass > 0);
  const wheel = (which: 'front' | 'rear'): CarriedBody[] => {
    const parts = lumps.filter((part) => part.body === `${which}Wheel`);
    if (parts.length === 0) return [];
    return [{ id: `${which}Wheel`, ...sumLumps(parts), carrier: { by: 'wheel', wheel: which } }];
  };
  const riderParts = lumps.filter((part) => part.body === 'rider');
  const rider: CarriedBody[] =
    riderParts.length === 0 ? [] : [{ id: 'rider', ...sumLumps(riderParts), carrier: { by: 'rider' } }];
  const rest = lumps.filter((part) => part.body === 'frame' || part.body === 'front');
  return [
    ...wheel('rear'),
    ...wheel('front'),
    ...rider,
    ...rest.flatMap((part): CarriedBody[] => {
      if (part.id === 'seating.pegs') return pegBodies(part, places, draft);
      const carrier = carrierOf(making, places, part);
      return [{ id: part.id, mass: part.mass, center: part.center, inertia: part.inertia, carrier }];
    }),
  ];
}

function pegBodies(part: MassPart, places: Places, draft: FrameDraft): CarriedBody[] {
  return places.pegs.map((node, i) => ({
    id: `${part.id}.${i === 0 ? 'left' : 'right'}`,
    mass: part.mass / 2,
    center: draft.nodes.get(node)!,
    inertia: [0, 0, 0, 0, 0, 0],
    carrier: { by: 'node', node },
  }));
}

function carrierOf(making: Making, places: Places, part: MassPart): Carrier {
  const { build, draft, frameLines, flaws, plates } = making;
  const to = (holder: string): Carrier => {
    const node = draft.point(`mass:${part.id}`, part.center);
    draft.tie(holder, node);
    return { by: 'node', node };
  };
  if (part.id === 'engine' || part.id.startsWith('stacks.engine') || part.id.startsWith('driveline.'))
    return to(places.engine);
  if (part.id.startsWith('plates.')) {
    const [name, hand] = part.id.slice('plates.'.length).split('.') as [string, string | undefined];
    const keys = hand ? [`${name}.${hand}`] : ['left', 'center', 'right'].map((one) => `${name}.${one}`);
    const held = keys.map((key) => plates.get(key)).find((node) => node !== undefined);
    return to(held ?? places.engine);
  }
  const stack = build.stacks[part.id.split('.')[1] ?? ''];
  const shaft = part.id.startsWith('shafts.') ? part.id.slice('shafts.'.length) : stack?.shaft;
  if (shaft === 'rearAxle') return to(places.rear.held[part.center.y > 0 ? 0 : 1]);
  if (shaft === 'frontAxle') return to(places.front.held[part.center.y > 0 ? 0 : 1]);
  if (shaft !== undefined) {
    const near = [...places.bearings]
      .filter(({ node }) => node.startsWith(`bearing:${shaft}.`))
      .sort((a, b) => Math.abs(a.y - part.center.y) - Math.abs(b.y - part.center.y))[0];
    if (near) return to(near.node);
  }
  if (part.id === 'brakes.front.caliper') return to(places.legs[part.center.y > 0 ? 0 : 1]);
  if (part.id === 'brakes.rear.caliper') return to(places.rear.held[part.center.y > 0 ? 0 : 1]);
  if (part.body === 'front') return to(places.upperClamp);
  if (part.id === 'seating.seat' && places.seats[0]) return to(places.seats.at(-1)!.node);
  const contact = hangNodes(draft, frameLines, part.center, HANG_SPREAD);
  if (!contact) {
    flaws.push({ rule: 'nothing-near', part: part.id, reason: 'there is no tube to hold it' });
    return to(places.engine);
  }
  return contact.nodes.length >= 4 ? { by: 'spread', nodes: contact.nodes } : to(contact.nodes[0]!);
}

/** Half the distance of the straps of a body between two tubes [m]. @source practice */
const HANG_SPREAD = 0.05;

/** Lumps for vibration; the static loads take the bodies themselves. */
function addLump(draft: FrameDraft, body: CarriedBody, places: Places): void {
  const { carrier, mass } = body;
  if (carrier.by === 'node') draft.addMass(carrier.node, mass, body.inertia);
  else if (carrier.by === 'spread')
    for (const node of carrier.nodes) draft.addMass(node, mass / carrier.nodes.length);
  else if (carrier.by === 'wheel')
    for (const node of places[carrier.wheel].hub) draft.addMass(node, mass / 2);
}

/** Middle of a member [m]. */
export const memberMiddle = (frame: BikeFrame, from: string, to: string): Point3 =>
  midpoint(frame.draft.nodes.get(from)!, frame.draft.nodes.get(to)!);
