import type { Bike, PlacedTube, TubeFlaw } from '../bike/index.ts';
import type { Build } from '../build/index.ts';
import { derived, practice } from '../quantity/index.ts';
import { type Bound, judgedBy } from './bound.ts';
import type { Finding } from './finding.ts';
import { sayLength } from './words.ts';

/** What cannot be bent, coped or cut from stock as drawn. */
export function tubeFindings(build: Build, bike: Bike): readonly Finding[] {
  const left = bike.tubes.filter((tube) => tube.hand !== 'right');
  return [
    ...bike.tubeFlaws.filter((flaw) => !flaw.tube.endsWith('.right')).map(flawFinding),
    ...left.flatMap((tube) => legFindings(build, tube)),
    ...left.flatMap((tube) => stockFindings(build, tube)),
    ...left.flatMap((tube) => dieFindings(build, tube)),
  ];
}

const FLAW_TEXT: Readonly<
  Record<TubeFlaw['rule'], { severity: Finding['severity']; bound: Bound; why: string; remedy: string }>
> = {
  'no-centerline': {
    bound: 'none',
    severity: 'stop',
    why: 'There is no such tube.',
    remedy: 'Change its nodes.',
  },
  'bends-overlap': {
    bound: 'max',
    severity: 'stop',
    why: 'The bends have no room one after the other.',
    remedy: 'Nodes further apart, a smaller bend radius, or two tubes.',
  },
  'no-cope': {
    bound: 'none',
    severity: 'stop',
    why: 'The end cannot be fitted round that tube.',
    remedy: 'A thinner branch, less offset, or a plate between.',
  },
  'bend-in-cope': {
    bound: 'min',
    severity: 'caution',
    why: 'A bent end does not fit a cope marked from a straight one.',
    remedy: 'Move the bend away from the joint.',
  },
  'copes-meet': {
    bound: 'none',
    severity: 'stop',
    why: 'Nothing is left of the tube between its joints.',
    remedy: 'A gusset instead, or nodes further apart.',
  },
};

function flawFinding(flaw: TubeFlaw): Finding {
  const text = FLAW_TEXT[flaw.rule];
  return {
    id: `tube.${flaw.rule}:${flaw.tube}${flaw.end ? `:${flaw.end}` : ''}`,
    severity: text.severity,
    question: 'make',
    part: flaw.tube,
    path: `frame.tubes.${flaw.tube}`,
    what: `Tube "${flaw.tube}"${flaw.end ? `, ${flaw.end}` : ''}: ${flaw.reason}.`,
    ...(flaw.value === undefined || flaw.limit === undefined
      ? {}
      : judgedBy(text.bound, { value: flaw.value, limit: flaw.limit }, 'length')),
    why: text.why,
    remedy: text.remedy,
    source: derived('tangent arcs and cope geometry'),
  };
}

/** Straights between bends shorter than the bender can hold. */
function legFindings(build: Build, tube: PlacedTube): Finding[] {
  const shortest = build.shop?.bender?.shortestLeg;
  if (shortest === undefined || tube.centerline.bends.length < 2) return [];
  const inner = tube.centerline.pieces.slice(1, -1).filter((piece) => piece.kind === 'straight');
  const least = Math.min(...inner.map((piece) => piece.length));
  if (!(least < shortest)) return [];
  return [
    {
      id: `tube.short-leg:${tube.entry}`,
      severity: 'caution',
      question: 'make',
      part: tube.entry,
      path: `frame.tubes.${tube.entry}`,
      what: `Tube "${tube.entry}" has ${sayLength(least)} of straight between two bends; the bender holds ${sayLength(shortest)}.`,
      value: least,
      limit: shortest,
      margin: least - shortest,
      kind: 'length',
      why: 'The second bend cannot be clamped.',
      remedy: 'Nodes further apart, or two tubes with a joint between.',
      source: practice('straight that the bender must hold'),
    },
  ];
}

/** A tube longer than the longest bar on hand. */
function stockFindings(build: Build, tube: PlacedTube): Finding[] {
  const bars = (build.shop?.tubeStock ?? []).filter(
    (bar) => bar.tubing === build.frame.tubes[tube.entry]?.tubing,
  );
  if (bars.length === 0) return [];
  const longest = Math.max(...bars.map((bar) => bar.length));
  const needed = tube.centerline.length + tube.ends[0].leaveLong + tube.ends[1].leaveLong;
  if (needed <= longest) return [];
  return [
    {
      id: `tube.longer-than-stock:${tube.entry}`,
      severity: 'stop',
      question: 'make',
      part: tube.entry,
      path: `frame.tubes.${tube.entry}`,
      what: `Tube "${tube.entry}" needs ${sayLength(needed)}; the longest bar on hand is ${sayLength(longest)}.`,
      value: needed,
      limit: longest,
      margin: longest - needed,
      kind: 'length',
      why: 'It cannot be cut from what is on hand.',
      remedy: 'A longer bar, or a joint with a slug.',
      source: derived('developed length with what is left on'),
    },
  ];
}

/** A bend drawn with another radius than the die has. */
function dieFindings(build: Build, tube: PlacedTube): Finding[] {
  const die = build.shop?.bender?.centerlineRadius;
  const other = tube.centerline.bends.find(
    (bend) => die !== undefined && Math.abs(bend.radius - die) > 0.5e-3,
  );
  if (die === undefined || !other) return [];
  return [
    {
      id: `tube.die:${tube.entry}`,
      severity: 'caution',
      question: 'make',
      part: tube.entry,
      path: `frame.tubes.${tube.entry}.centerlineRadius`,
      what: `Tube "${tube.entry}" is drawn with a bend radius of ${sayLength(other.radius)}; the bender's die is ${sayLength(die)}.`,
      value: other.radius,
      limit: die,
      margin: -Math.abs(other.radius - die),
      kind: 'length',
      why: 'Another radius moves the start of every bend.',
      remedy: 'Draw it with the die, or have that tube bent elsewhere.',
      source: practice('bend with the die on hand'),
    },
  ];
}
