import { mm, practice, type SourceRef } from '../quantity/index.ts';
import { bearingRingLimits, findBearing, fitLimits, interferenceOf } from '../standards/index.ts';
import type { FlatPattern, Opening, PlateFlaw } from './pattern.ts';

/** A plate thinner than this share of the bearing's width holds it by the fit alone badly. */
const THIN_FOR_BEARING = 0.6;
/** From this interference up a bearing wants a press and more internal clearance [m]. */
const NEEDS_PRESS = mm(0.033);
const FIT_ADVICE: SourceRef = practice(
  'thin plate: M7 to N7 pressed by hand, P7 by arbor press, with a retainer',
);

/**
 * Advice on bearing bores: a fit that is loose on an outside ring in the middle of both tolerances, one so tight that it takes the bearing's
 * clearance, and a plate too thin to hold the ring by its fit.
 * @source iso-286 for the limits; practice for the choice
 */
export function boreFlaws(pattern: FlatPattern): readonly PlateFlaw[] {
  return pattern.openings
    .filter((opening) => opening.kind === 'bore')
    .flatMap((bore) => boreAdvice(pattern, bore));
}

function boreAdvice(pattern: FlatPattern, bore: Opening): PlateFlaw[] {
  const hole = bore.fit === undefined ? undefined : fitLimits(bore.diameter, bore.fit);
  const ring = bearingRingLimits(bore.diameter, 'outside');
  const width = bearingWidth(bore);
  if (!hole?.ok || !ring) return [];
  const { least, most } = interferenceOf(hole.value, ring);
  const base = {
    plate: pattern.id,
    features: [bore.id],
    kind: 'length',
    source: FIT_ADVICE,
  } as const;
  const flaws: PlateFlaw[] = [];
  if (most + least <= 0) {
    const remedy =
      'In a plate take M7 to P7, or add a retainer: this fit is loose more often than tight, and the ring creeps.';
    const value = (most + least) / 2;
    flaws.push({ ...base, rule: 'bore-loose', value, limit: 0, severity: 'caution', remedy });
  }
  if (most > NEEDS_PRESS + 1e-9) {
    const remedy = 'Press it in with an arbor press and take a bearing with C3 clearance, or heat the plate.';
    flaws.push({ ...base, rule: 'bore-tight', value: most, limit: NEEDS_PRESS, severity: 'note', remedy });
  }
  if (width !== undefined && pattern.thickness < THIN_FOR_BEARING * width) {
    const remedy = 'The plate is thin for this bearing: add a retainer plate or ring, or a thicker boss.';
    flaws.push({
      ...base,
      rule: 'bore-thin-plate',
      value: pattern.thickness,
      limit: THIN_FOR_BEARING * width,
      severity: 'note',
      remedy,
    });
  }
  return flaws;
}

function bearingWidth(bore: Opening): number | undefined {
  const bearing = findBearing(bore.for);
  return bearing.ok ? bearing.value.width : undefined;
}
