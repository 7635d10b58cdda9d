import { expect, test } from 'vitest';
import { assembleFrame, sectionForces, solveFrame } from '../../src/core/strength/index.ts';
import { LONG, solidDeck } from '../support/solidDeck.ts';
import { solidDemo } from '../support/solidFrame.ts';
import { solveSolid } from '../support/solidSolver.ts';

/**
 * As asked for. What is left (0.2 % of movements, 0.1 % of the largest force, 0.6 % of single ones) falls by two thirds
 * with bars half as thick of the same bending stiffness: joints of bricks have a size. Stiff bodies are a ten-thousandth
 * soft there; with a thousandth 0.4 % were left of movements.
 */
const WITHIN = 0.01;
/** Values below this share of the largest are compared by it: they are differences of large ones. */
const SMALL = 0.1;

/** Largest difference of pairs, each against the second one, or the small share of the largest. */
function expectWithin(
  pairs: readonly { readonly what: string; readonly own: number; readonly other: number }[],
) {
  const largest = Math.max(...pairs.map(({ own }) => Math.abs(own)));
  for (const { what, own, other } of pairs) {
    const scale = Math.max(Math.abs(other), SMALL * largest);
    expect(Math.abs(own - other) / scale, `${what}: ${own} and ${other}`).toBeLessThan(WITHIN);
  }
}

test.each(['light', 'heavy'] as const)(
  'the whole frame of the %s demo, front end and all, moves and carries as one of bricks',
  { timeout: 60_000 },
  (name) => {
    const frame = solidDemo(name);
    const { text, number, middles } = solidDeck(frame);
    const bricks = solveSolid(text);
    const assembled = assembleFrame(frame.model);
    if (!assembled.ok) throw new Error('the frame is a mechanism');
    const solved = solveFrame(assembled.value, [{ nodes: frame.loads }]);
    if (!solved.ok) throw new Error('refused');
    const { displacements, memberForces, memberLoads } = solved.value[0]!;

    expectWithin(
      assembled.value.nodeIds.flatMap((id, i) => {
        const moved = bricks.moved.get(number(id))!;
        return [0, 1, 2].map((k) => ({
          what: `${id} along ${k}`,
          own: displacements[i * 6 + k]! * 1000,
          other: moved[k]!,
        }));
      }),
    );

    // Bars with both ends in one stiff body carry nothing beside it; short ones are as thick as long and say nothing of a
    // beam. Resultants across, since square bars have no own turn.
    const bodyOf = (id: string) => frame.bodies.find((body) => body.includes(id));
    const compared = frame.model.members.flatMap(({ id, from, to }, m) => {
      if (bodyOf(from) === bodyOf(to) || assembled.value.elements[m]!.length < LONG) return [];
      const [shearY, shearZ, normal, torque, momentY, momentZ] = bricks.forces.get(middles[m]!)!;
      const own = sectionForces(memberForces, memberLoads, assembled.value.elements[m]!.length / 2, m);
      const across = Math.hypot(shearY!, shearZ!);
      const bending = Math.hypot(momentY!, momentZ!) / 1000;
      return [
        {
          id,
          forces: [
            { what: `normal of ${id}`, own: own.normal, other: normal! },
            { what: `shear of ${id}`, own: Math.hypot(own.shearY, own.shearZ), other: across },
          ],
          moments: [
            { what: `torque of ${id}`, own: own.torque, other: torque! / 1000 },
            { what: `bending of ${id}`, own: Math.hypot(own.momentY, own.momentZ), other: bending },
          ],
        },
      ];
    });
    const ids = compared.map(({ id }) => id.split('#')[0]);
    expect(compared.length).toBeGreaterThan(25);
    for (const line of ['stem', 'leg.left', 'leg.right', 'lowerRail', 'upperRail'])
      expect(ids).toContain(line);
    expectWithin(compared.flatMap(({ forces }) => forces));
    expectWithin(compared.flatMap(({ moments }) => moments));
  },
);
