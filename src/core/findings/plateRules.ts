import type { PlateFlaw } from '../plates/index.ts';
import { judgedBy, type RuleText } from './bound.ts';
import type { Finding } from './finding.ts';
import { sayFit, sayLength, sayList } from './words.ts';

const TEXT: Readonly<Record<PlateFlaw['rule'], RuleText<PlateFlaw>>> = {
  'edge-distance': {
    bound: 'min',
    what: (f) => `${features(f)} ${has(f)} ${sayLength(f.value)} to the edge, wanted ${sayLength(f.limit)}`,
    why: 'A bolt near the edge tears out.',
  },
  ligament: {
    bound: 'min',
    what: (f) => `${sayLength(f.value)} of metal between ${features(f)}, wanted ${sayLength(f.limit)}`,
    why: 'A thin bridge burns through or cracks.',
  },
  'breaks-into-old-hole': {
    bound: 'min',
    what: (f) =>
      `${features(f)} break into each other: their centers are ${sayLength(f.value)} apart, wanted at least ${sayLength(f.limit)}`,
    why: 'A drill wanders into the old hole and the bolt has no seat.',
  },
  'hole-too-small': {
    bound: 'min',
    what: (f) =>
      `${features(f)} of ${sayLength(f.value)} cannot be made this way, smallest ${sayLength(f.limit)}`,
    why: 'The hole comes out tapered or not at all.',
  },
  'hole-too-large': {
    bound: 'max',
    what: (f) =>
      `${features(f)} of ${sayLength(f.value)} cannot be made this way, largest ${sayLength(f.limit)}`,
    why: 'The tool does not reach.',
  },
  'slot-end': {
    bound: 'min',
    what: (f) =>
      `the end of ${features(f)} has ${sayLength(f.value)} to the edge, wanted ${sayLength(f.limit)}`,
    why: 'The end of a slot carries the whole pull.',
  },
  'slot-too-short': {
    bound: 'min',
    what: (f) =>
      `${features(f)} gives ${sayLength(f.value)} of travel, the drive needs ${sayLength(f.limit)}`,
    why: 'The next link or a worn chain does not fit the slot.',
  },
  'bend-radius': {
    bound: 'min',
    what: (f) => `${features(f)} is bent to ${sayLength(f.value)} inside, wanted ${sayLength(f.limit)}`,
    why: 'A bend too sharp cracks.',
  },
  'bend-near-hole': {
    bound: 'min',
    what: (f) => `${features(f)} are ${sayLength(f.value)} apart, wanted ${sayLength(f.limit)}`,
    why: 'A hole near a bend goes oval.',
  },
  'outline-crosses-itself': {
    bound: 'none',
    what: () => 'its outline crosses itself',
    why: 'There is no such plate.',
  },
  'hole-outside': {
    bound: 'min',
    what: (f) => `${features(f)} lies outside the plate`,
    why: 'There is no metal there.',
  },
  'does-not-fit-stock': {
    bound: 'max',
    what: (f) =>
      `it measures ${sayLength(f.value)} where the nearest sheet on hand has ${sayLength(f.limit)}`,
    why: 'It cannot be cut from what is on hand.',
  },
  'slot-direction': {
    bound: 'max',
    what: (f) => `${features(f)} does not lie along the way the shaft slides`,
    why: 'The shaft cannot follow the drive it is set by.',
  },
  'pad-overlap': {
    bound: 'max',
    what: (f) =>
      `the pads move ${sayLength(f.value)} off the disc as the axle slides, at most ${sayLength(f.limit)}`,
    why: 'A pad over the edge wears a lip and pulls less.',
  },
  'cannot-be-drawn': {
    bound: 'none',
    what: (f) => `it cannot be drawn: ${features(f)}`,
    why: 'The dimensions given contradict each other.',
  },
  'slot-unknown': {
    bound: 'none',
    what: (f) => `nothing says how long the slot for shaft "${features(f)}" must be`,
    why: 'The template would show a round hole where a slot is wanted.',
  },
  'no-sheet': {
    bound: 'none',
    what: (f) => `no sheet of ${sayLength(f.value)} is on hand; the nearest is ${sayLength(f.limit)}`,
    why: 'It cannot be cut from what is on hand.',
  },
  'bore-loose': {
    bound: 'min',
    what: (f) =>
      `bore "${features(f)}" has ${sayFit(-f.value)} of play round its bearing in the middle of both tolerances`,
    why: 'A loose outer ring creeps and wears the bore.',
  },
  'bore-tight': {
    bound: 'max',
    what: (f) =>
      `bore "${features(f)}" can be ${sayFit(f.value)} tighter than its bearing, over ${sayFit(f.limit)}`,
    why: "So tight a fit takes the bearing's clearance and does not go in by hand.",
  },
  'bore-thin-plate': {
    bound: 'min',
    what: (f) =>
      `the plate is ${sayLength(f.value)} thick at bore "${features(f)}", wanted ${sayLength(f.limit)} to hold the ring by its fit alone`,
    why: 'The ring tips and works loose.',
  },
};

export function plateFindings(flaws: readonly PlateFlaw[]): readonly Finding[] {
  return flaws.map((flaw) => {
    const text = TEXT[flaw.rule];
    return {
      id: `plate.${flaw.rule}:${flaw.plate}:${flaw.features.join('-')}`,
      severity: flaw.severity,
      question: 'make' as const,
      part: flaw.plate,
      path: `plates.${flaw.plate}`,
      what: `Plate "${flaw.plate}": ${text.what(flaw)}.`,
      ...judgedBy(text.bound, flaw, flaw.kind),
      why: text.why,
      remedy: flaw.remedy,
      source: flaw.source,
    };
  });
}

const features = (flaw: PlateFlaw): string => sayList(flaw.features);
const has = (flaw: PlateFlaw): string => (flaw.features.length > 1 ? 'have' : 'has');
