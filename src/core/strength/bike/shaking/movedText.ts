import type { MovedMost } from './movedMost.ts';

/** Parts whose name in the model is no word of the trade. */
const WORDS: Readonly<Record<string, readonly [one: string, both: string]>> = {
  'leg.left': ['left fork leg', 'fork legs'],
  'leg.right': ['right fork leg', 'fork legs'],
  'grip.left': ['left grip', 'grips'],
  'grip.right': ['right grip', 'grips'],
  'peg.left': ['left peg', 'pegs'],
  'peg.right': ['right peg', 'pegs'],
  rearAxle: ['rear axle', 'rear axle'],
  frontAxle: ['front axle', 'front axle'],
};
/** First words of names that only say what kind a part is. */
const KINDS = /^(bodies|steering|seating|brakes|plates|shafts|tubes)\./;

/** What moves most and which way, in words: `grips, sideways`. */
export function movedText({ part, isPair, direction }: MovedMost): string {
  const known = WORDS[part];
  if (known) return `${known[isPair ? 1 : 0]}, ${direction}`;
  const stack = /^stacks\.(.+)$/.exec(part)?.[1];
  const name = stack === undefined ? part.replace(KINDS, '') : `parts on the ${stack} axle`;
  const side = /\.(left|right)$/.exec(name)?.[1];
  const words = spaced(name.replace(/\.(left|right)$/, ''));
  if (isPair) return `${words}, both sides, ${direction}`;
  return `${words}${side === undefined ? '' : `, ${side}`}, ${direction}`;
}

const spaced = (name: string): string =>
  name
    .replaceAll('.', ' ')
    .replaceAll(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
