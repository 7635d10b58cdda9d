import { originalName } from '../build/index.ts';
import type { Clearance } from '../fit/index.ts';
import type { Finding } from './finding.ts';
import { sayLength } from './words.ts';

const TEXT: Readonly<
  Record<
    Clearance['rule'],
    { pair: (parts: readonly [string, string]) => string; why: string; remedy: string }
  >
> = {
  'chain-tube': {
    pair: ([drive, tube]) => `chain "${drive}" and tube "${tube}"`,
    why: 'A chain saws through a tube, or the tube throws it.',
    remedy: 'Move the shaft, the sprocket plane or the tube.',
  },
  'sprocket-tube': {
    pair: ([drive, tube]) => `the sprockets of "${drive}" and tube "${tube}"`,
    why: 'Teeth cut the tube.',
    remedy: 'Move the shaft, the sprocket plane or the tube.',
  },
  'sprocket-ground': {
    pair: ([drive, shaft]) => `the sprocket of "${drive}" on "${shaft}" and the ground, upright`,
    why: 'It touches first in a lean, and picks up stones.',
    remedy: 'A smaller sprocket, two stages or a larger tire.',
  },
  'tire-tube': {
    pair: ([tire, tube]) => `the ${tire} and tube "${tube}"`,
    why: 'A tire that touches cuts through or locks.',
    remedy: 'Move the tube or take a smaller tire.',
  },
  'locked-tire-tube': {
    pair: ([tire, tube]) => `the ${tire} at full lock and tube "${tube}"`,
    why: 'The wheel must not meet the frame at full lock.',
    remedy: 'Stops at a smaller lock angle, or move the tube.',
  },
  'engine-tube': {
    pair: ([, tube]) => `the engine's envelope and tube "${tube}"`,
    why: 'The engine must go in, and shakes in use.',
    remedy: 'Move the engine or the tube; measure the engine where it comes near.',
  },
  'engine-tire': {
    pair: ([, tire]) => `the engine and the ${tire}`,
    why: 'A tire that touches cuts through or locks.',
    remedy: 'Move the engine.',
  },
  'tire-shaft': {
    pair: ([tire, shaft]) => `the ${tire} and shaft "${shaft}"`,
    why: 'A tire that touches cuts through or locks.',
    remedy: 'Move the shaft away from the wheel.',
  },
};

export function clearanceFindings(clearances: readonly Clearance[]): readonly Finding[] {
  return clearances
    .filter((clearance) => !clearance.within)
    .map((clearance) => {
      const text = TEXT[clearance.rule];
      const pair = text.pair(clearance.parts);
      return {
        id: `clearance.${clearance.rule}:${clearance.parts.join('-')}`,
        severity: clearance.gap <= 0 ? ('stop' as const) : ('caution' as const),
        question: 'together' as const,
        part: clearance.parts[1],
        path: pathOf(clearance),
        what:
          clearance.gap <= 0
            ? `${capital(pair)} are in each other's way by ${sayLength(-clearance.gap)} or more.`
            : `Only ${sayLength(clearance.gap)} between ${pair}.`,
        value: clearance.gap,
        limit: clearance.limit,
        margin: clearance.gap - clearance.limit,
        kind: 'length' as const,
        why: text.why,
        remedy: text.remedy,
        source: clearance.source,
      };
    });
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The part that is easier moved: a tube by its nodes, a shaft by its place. */
function pathOf({ rule, parts }: Clearance): string {
  const name = originalName(parts[1]);
  if (rule === 'sprocket-ground' || rule === 'tire-shaft')
    return name === 'rearAxle' ? 'driveline' : `driveline.shafts.${name}`;
  return rule === 'engine-tire' ? 'engine.place' : `frame.tubes.${name}`;
}
