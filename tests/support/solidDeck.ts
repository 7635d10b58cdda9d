import {
  add3,
  between3,
  cross3,
  distance3,
  type Point3,
  scale3,
  subtract3,
  unit3,
} from '../../src/core/geometry/index.ts';
import type { FrameMember } from '../../src/core/strength/index.ts';
import { ELASTIC, HELD, type SolidFrame } from './solidFrame.ts';

export interface Deck {
  readonly text: string;
  /** Number of a node in the solver's file. */
  readonly number: (id: string) => number;
  /** Number of the node in the middle of each member. */
  readonly middles: readonly number[];
}

/** Bars shorter than this have room for two elements only [m]. */
export const LONG = 0.07;

/**
 * Quadratic elements of a long bar. With two, both end at a joint, where the solver keeps their end faces plane, and the
 * normal force that it prints between them is off by up to 0.7 % of the largest; with four it is by 0.07 %.
 */
const PARTS = 4;
/** Of the bars that make a stiff body, against the members' material. */
const STIFF = 1e4;
const STIFF_SIDE = 0.03;

/**
 * The solver's input in N and mm. Stiff bodies are trees of stiff bars; a released end is a second node that follows the
 * joint by equations.
 * @param steps load cases, each a step of its own
 */
export function solidDeck(frame: SolidFrame, steps: readonly SolidFrame['loads'][] = [frame.loads]): Deck {
  const draft = new DeckDraft(frame);
  const middles = frame.model.members.map((member) => draft.member(member));
  for (const body of frame.bodies) draft.body(body);
  const number = (id: string) => draft.joint(id).number;
  const loaded = steps.flatMap((loads) => [
    ...['*STEP', '*STATIC', '*BOUNDARY', `${number(HELD)}, 1, 6`, '*CLOAD, OP=NEW'],
    ...loads.flatMap(({ node, force }) =>
      [force!.x, force!.y, force!.z].map((value, i) => `${number(node)}, ${i + 1}, ${value.toFixed(6)}`),
    ),
    ...['*NODE FILE, OUTPUT=2D', 'U', '*EL FILE, SECTION FORCES', 'S', '*END STEP'],
  ]);
  return { text: [...draft.lines(), ...loaded, ''].join('\n'), number, middles };
}

interface Joint {
  readonly number: number;
  readonly at: Point3;
}

const SIDEWAYS: Point3 = { x: 0, y: 1, z: 0 };
/** [m] */
const ARM = 0.1;

/** Nodes, bars and equations as they come together. */
class DeckDraft {
  private readonly points: Point3[] = [];
  private readonly joints = new Map<string, Joint>();
  private readonly sets = new Map<string, { readonly rows: string[]; readonly section: readonly string[] }>();
  private readonly equations: string[] = [];
  private count = 0;

  constructor({ model, bodies }: SolidFrame) {
    // Nodes of a body at one place are one.
    for (const body of bodies)
      for (const id of body) {
        const at = model.nodes[id]!;
        const twin = body.find((other) => this.joints.has(other) && distance3(at, model.nodes[other]!) === 0);
        this.joints.set(id, twin === undefined ? this.node(at) : this.joints.get(twin)!);
      }
  }

  joint(id: string): Joint {
    const joint = this.joints.get(id);
    if (!joint) throw new Error(`no joint "${id}"`);
    return joint;
  }

  /** The number of the member's middle node. */
  member({ from, to, area, releases }: FrameMember): number {
    const [start, joint, side] = [this.joint(from), this.joint(to), Math.sqrt(area)];
    const released = releases?.to;
    if (!released) return this.bar(start, joint, 'steel', side);
    const end = this.node(joint.at);
    const along = unit3(subtract3(joint.at, start.at));
    const axes = [along, SIDEWAYS, cross3(along, SIDEWAYS)] as const;
    (['ux', 'uy', 'uz'] as const).forEach((direction, i) => {
      if (!released.includes(direction)) this.couple(end, joint, axes[i]!);
    });
    // Twist goes over by the tips of two arms: the solver takes no equations between turns.
    if (!released.includes('rx')) this.couple(this.arm(end), this.arm(joint), axes[2]);
    return this.bar(start, end, 'steel', side);
  }

  /** Stiff bars from each node of a body to the nearest of those before it. */
  body(ids: readonly string[]): void {
    const [first, ...rest] = new Set(ids.map((id) => this.joint(id)));
    const tree = [first!];
    for (const one of rest) {
      const nearest = tree.toSorted((a, b) => distance3(a.at, one.at) - distance3(b.at, one.at))[0]!;
      this.bar(nearest, one, 'stiff', STIFF_SIDE);
      tree.push(one);
    }
  }

  lines(): string[] {
    const sets = [...this.sets.values()];
    return [
      '*NODE, NSET=all',
      // The solver reads twenty characters a number.
      ...this.points.map(({ x, y, z }, i) =>
        [i + 1, ...[x, y, z].map((v) => (v * 1000).toFixed(9))].join(', '),
      ),
      ...sets.flatMap(({ rows }, i) => [`*ELEMENT, TYPE=B32R, ELSET=E${i}`, ...rows]),
      ...this.equations,
      ...['*MATERIAL, NAME=steel', '*ELASTIC', `${(ELASTIC / 1e6).toExponential(6)}, 0.`],
      ...['*MATERIAL, NAME=stiff', '*ELASTIC', `${((STIFF * ELASTIC) / 1e6).toExponential(6)}, 0.`],
      ...sets.flatMap(({ section: [material, sides, normal] }, i) => [
        `*BEAM SECTION, ELSET=E${i}, MATERIAL=${material}, SECTION=RECT`,
        sides!,
        normal!,
      ]),
    ];
  }

  private node(at: Point3): Joint {
    return { number: this.points.push(at), at };
  }

  private arm(hub: Joint): Joint {
    const tip = this.node(add3(hub.at, scale3(SIDEWAYS, ARM)));
    this.bar(hub, tip, 'stiff', STIFF_SIDE);
    return tip;
  }

  /** The number of the bar's middle node. */
  private bar(from: Joint, to: Joint, material: string, side: number): number {
    const length = distance3(from.at, to.at);
    const parts = length < LONG ? 2 : PARTS;
    const inner = Array.from({ length: 2 * parts - 1 }, (_, j) =>
      this.node(between3(from.at, to.at, (j + 1) / (2 * parts))),
    );
    const chain = [from, ...inner, to].map(({ number }) => number);
    const mm = (side * 1000).toFixed(6);
    // A square bar is alike in any turn about itself: the direction only must not lie along it.
    const isSteep = Math.abs(to.at.z - from.at.z) > 0.8 * length;
    const section = [material, `${mm}, ${mm}`, isSteep ? '1., 0., 0.' : '0., 0., 1.'];
    const set = this.sets.get(section.join()) ?? { rows: [], section };
    this.sets.set(section.join(), set);
    for (let j = 0; j < parts; j++)
      set.rows.push([++this.count, ...chain.slice(2 * j, 2 * j + 3)].join(', '));
    return chain[parts]!;
  }

  /** Two nodes move alike along a direction. */
  private couple(node: Joint, to: Joint, { x, y, z }: Point3): void {
    const terms = [x, y, z]
      .map((part, i) => ({ part, direction: i + 1 }))
      .filter(({ part }) => Math.abs(part) > 1e-9)
      // The first term is the one that is taken out: the largest.
      .toSorted((a, b) => Math.abs(b.part) - Math.abs(a.part))
      .flatMap(({ part, direction }) => [
        `${node.number}, ${direction}, ${part.toFixed(12)}`,
        `${to.number}, ${direction}, ${(-part).toFixed(12)}`,
      ]);
    this.equations.push('*EQUATION', String(terms.length));
    // Four terms a line.
    for (let i = 0; i < terms.length; i += 4) this.equations.push(terms.slice(i, i + 4).join(', '));
  }
}
