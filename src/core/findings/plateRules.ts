import type { PlateFlaw } from '../plates/index.ts';
import type { Finding } from './finding.ts';
import { sayLength, sayList } from './words.ts';

const TEXT: Readonly<Record<PlateFlaw['rule'], { what: (flaw: PlateFlaw) => string; why: string }>> = {
  'edge-distance': {
    what: (f) => `${features(f)} ${has(f)} ${sayLength(f.value)} to the edge, wanted ${sayLength(f.limit)}`,
    why: 'A bolt near the edge tears out.',
  },
  ligament: {
    what: (f) => `${sayLength(f.value)} of metal between ${features(f)}, wanted ${sayLength(f.limit)}`,
    why: 'A thin bridge burns through or cracks.',
  },
  'breaks-into-old-hole': {
    what: (f) =>
      `${features(f)} break into each other: ${sayLength(f.value)} between them, wanted ${sayLength(f.limit)}`,
    why: 'A drill wanders into the old hole and the bolt has no seat.',
  },
  'hole-too-small': {
    what: (f) =>
      `${features(f)} of ${sayLength(f.value)} cannot be made this way, smallest ${sayLength(f.limit)}`,
    why: 'The hole comes out tapered or not at all.',
  },
  'hole-too-large': {
    what: (f) =>
      `${features(f)} of ${sayLength(f.value)} cannot be made this way, largest ${sayLength(f.limit)}`,
    why: 'The tool does not reach.',
  },
  'slot-end': {
    what: (f) =>
      `the end of ${features(f)} has ${sayLength(f.value)} to the edge, wanted ${sayLength(f.limit)}`,
    why: 'The end of a slot carries the whole pull.',
  },
  'slot-too-short': {
    what: (f) =>
      `${features(f)} gives ${sayLength(f.value)} of travel, the drive needs ${sayLength(f.limit)}`,
    why: 'The next link or a worn chain does not fit the slot.',
  },
  'bend-radius': {
    what: (f) => `${features(f)} is bent to ${sayLength(f.value)} inside, wanted ${sayLength(f.limit)}`,
    why: 'A bend too sharp cracks.',
  },
  'bend-near-hole': {
    what: (f) => `${features(f)}: ${sayLength(f.value)} apart, wanted ${sayLength(f.limit)}`,
    why: 'A hole near a bend goes oval.',
  },
  'outline-crosses-itself': { what: () => 'its outline crosses itself', why: 'There is no such plate.' },
  'hole-outside': { what: (f) => `${features(f)} lies outside the plate`, why: 'There is no metal there.' },
  'does-not-fit-stock': {
    what: (f) =>
      `it is ${sayLength(f.value)} long and no sheet of its thickness on hand is (${sayLength(f.limit)})`,
    why: 'It cannot be cut from what is on hand.',
  },
  'slot-direction': {
    what: (f) => `${features(f)} does not lie along the way the shaft slides`,
    why: 'The shaft cannot follow the drive it is set by.',
  },
  'pad-overlap': {
    what: (f) => `the pads miss the disc by ${sayLength(Math.abs(f.value - f.limit))}`,
    why: 'A pad over the edge wears a lip and pulls less.',
  },
  'cannot-be-drawn': {
    what: (f) => `it cannot be drawn: ${features(f)}`,
    why: 'The dimensions given contradict each other.',
  },
  'bore-fit': {
    what: (f) => `${features(f)}: fit of ${sayLength(f.value)} against ${sayLength(f.limit)}`,
    why: 'A bearing must neither creep nor be crushed.',
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
      value: flaw.value,
      limit: flaw.limit,
      margin: flaw.value - flaw.limit,
      kind: flaw.kind,
      why: text.why,
      remedy: flaw.remedy,
      source: flaw.source,
    };
  });
}

const features = (flaw: PlateFlaw): string => sayList(flaw.features);
const has = (flaw: PlateFlaw): string => (flaw.features.length > 1 ? 'have' : 'has');
