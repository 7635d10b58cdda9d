import type { StackFlaw } from '../bike/index.ts';
import { judgedBy, type RuleText } from './bound.ts';
import type { Finding } from './finding.ts';
import { sayLength, sayList } from './words.ts';

const TEXT: Readonly<Record<StackFlaw['rule'], RuleText<StackFlaw>>> = {
  misfit: {
    bound: 'within',
    what: (f) =>
      `between ${sayList(f.items)} the parts are ${sayLength(Math.abs(f.value))} too ${f.value > 0 ? 'long' : 'short'} for the place they have`,
    why: 'It goes together only by springing the frame, or the parts float.',
  },
  'two-unknowns': {
    bound: 'none',
    what: (f) => `more than one unknown length between fixed places: ${sayList(f.items)}; drawn equal`,
    why: 'A spacer can only be made to a length that is settled.',
  },
  'no-pin': {
    bound: 'none',
    what: () => 'nothing fixes it across the bike',
    why: 'A spacer can only be made to a length that is settled.',
  },
  'negative-spacer': {
    bound: 'min',
    what: (f) => `${sayList(f.items)} would have to be ${sayLength(f.value)} long: there is no room for it`,
    why: 'What is beside it takes more than the whole space.',
  },
  'unknown-drive': {
    bound: 'none',
    what: (f) => `${sayList(f.items)} should be in line with a drive that has no other plane`,
    why: 'A chain line needs both its planes.',
  },
  circular: {
    bound: 'none',
    what: (f) => `${sayList(f.items)} depend on each other and nothing fixes either`,
    why: 'A spacer can only be made to a length that is settled.',
  },
  'bore-under-shaft': {
    bound: 'min',
    what: (f) =>
      `the bore of ${sayList(f.items)}, ${sayLength(f.value)}, does not go over the shaft of ${sayLength(f.limit)}`,
    why: 'It cannot be fitted.',
  },
  'needs-sleeve': {
    bound: 'max',
    what: (f) =>
      `${sayList(f.items)} has a bore of ${sayLength(f.value)}; the axle fits up to ${sayLength(f.limit)} without a sleeve`,
    why: 'A full-length sleeve carries the load; a split or short one frets.',
  },
  'axle-too-short': {
    bound: 'min',
    what: (f) =>
      `the axle stands out ${sayLength(f.value)} at ${sayList(f.items)}, wanted ${sayLength(f.limit)}`,
    why: 'A nut without full thread lets go.',
  },
  'thread-out': {
    bound: 'min',
    what: (f) =>
      `only ${sayLength(f.value)} of thread stands out at ${sayList(f.items)}, wanted ${sayLength(f.limit)}`,
    why: 'A locknut wants its full thread and two threads showing.',
  },
  'nut-off-thread': {
    bound: 'max',
    what: (f) =>
      `the thread has to reach ${sayLength(f.value)} in from the end for ${sayList(f.items)} and is ${sayLength(f.limit)} long`,
    why: 'It never clamps.',
  },
  'thread-in-bearing': {
    bound: 'max',
    what: (f) => `${sayLength(f.value)} of thread lies inside ${sayList(f.items)}`,
    why: 'A thread cuts and frets in a bearing or plate.',
  },
  'thin-spacer': {
    bound: 'min',
    what: (f) => `${sayList(f.items)} comes out only ${sayLength(f.value)} long`,
    why: 'A washer-thin spacer is hard to make true.',
  },
  'hub-width': {
    bound: 'equal',
    what: (f) => `the hub is ${sayLength(f.value)} in the stack and ${sayLength(f.limit)} with the wheel`,
    why: 'One of the two is wrong, and the wheel goes off center.',
  },
  'rim-off-center': {
    bound: 'max',
    what: (f) => `the rim center is ${sayLength(Math.abs(f.value))} off the center plane`,
    why: 'The bike runs crooked.',
  },
  'disc-off-caliper': {
    bound: 'max',
    what: (f) => `the disc is ${sayLength(Math.abs(f.value))} off the middle of its caliper`,
    why: 'It drags on one pad and wears uneven.',
  },
  'shaft-too-short': {
    bound: 'max',
    what: (f) =>
      `what sits on the shaft (${sayList(f.items)}) takes ${sayLength(f.value)}; the shaft is ${sayLength(f.limit)} long`,
    why: 'The last part has nothing under it.',
  },
  'no-plane': {
    bound: 'none',
    what: (f) => `drive ${sayList(f.items)} has no plane in it`,
    why: 'A chain line needs both its planes.',
  },
};

/** Everything about axles, spacers, bores and threads. */
export function stackFindings(flaws: readonly StackFlaw[]): readonly Finding[] {
  return flaws.map((flaw) => {
    const text = TEXT[flaw.rule];
    return {
      id: `stack.${flaw.rule}:${flaw.stack}:${flaw.items.join('-')}`,
      severity: flaw.severity,
      question: flaw.rule === 'needs-sleeve' ? ('make' as const) : ('together' as const),
      part: flaw.stack,
      path: `stacks.${flaw.stack}`,
      what: `Stack "${flaw.stack}": ${text.what(flaw)}.`,
      ...judgedBy(text.bound, flaw, 'length'),
      why: text.why,
      remedy: flaw.remedy,
      source: flaw.source,
    };
  });
}
