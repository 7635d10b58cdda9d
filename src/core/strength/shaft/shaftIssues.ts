import type { Issue } from '../../quantity/index.ts';
import { SAME_PLACE, type Shaft, type ShaftSegment } from './shaft.ts';

/** Everything for which a shaft can not be solved; empty for one that can. */
export function shaftIssues(shaft: Shaft): readonly Issue[] {
  const segments = inOrder(shaft.segments);
  if (segments.length === 0) return [{ code: 'missing', path: 'segments', wanted: 'at least one segment' }];
  const own = [...segmentIssues(shaft.segments), ...jointIssues(segments)];
  if (own.length > 0) return own;
  return [...placeIssues(shaft, segments), ...supportIssues(shaft)];
}

export const inOrder = (segments: readonly ShaftSegment[]): readonly ShaftSegment[] =>
  [...segments].sort((a, b) => a.from - b.from);

function segmentIssues(segments: readonly ShaftSegment[]): readonly Issue[] {
  return segments.flatMap((segment, i): readonly Issue[] => {
    const path = `segments[${i}]`;
    if (!(segment.to - segment.from > SAME_PLACE))
      return [conflict(`${path}.to`, 'a segment ends after it starts')];
    if ((segment.bore ?? 0) >= segment.diameter)
      return [conflict(`${path}.bore`, 'the bore is smaller than the diameter')];
    return [];
  });
}

function jointIssues(segments: readonly ShaftSegment[]): readonly Issue[] {
  return segments.slice(1).flatMap((segment, i): readonly Issue[] => {
    const step = segment.from - segments[i]!.to;
    if (Math.abs(step) <= SAME_PLACE) return [];
    const at = edge(segments[i]!.to);
    return [conflict('segments', `the segments ${step > 0 ? 'leave a gap' : 'overlap'} near ${at} mm`)];
  });
}

function placeIssues(shaft: Shaft, segments: readonly ShaftSegment[]): readonly Issue[] {
  const [min, max] = [segments[0]!.from, segments.at(-1)!.to];
  const outside = (at: number, path: string): readonly Issue[] =>
    at >= min - SAME_PLACE && at <= max + SAME_PLACE
      ? []
      : [{ code: 'out-of-range', path, given: edge(at), min: edge(min), max: edge(max), unit: 'mm' }];
  return [
    ...shaft.supports.flatMap(({ at }, i) => outside(at, `supports[${i}].at`)),
    ...shaft.loads.flatMap(({ at }, i) => outside(at, `loads[${i}].at`)),
    ...(shaft.distributed ?? []).flatMap(({ from, to }, i) => [
      ...outside(from, `distributed[${i}].from`),
      ...outside(to, `distributed[${i}].to`),
      ...(to - from > SAME_PLACE
        ? []
        : [conflict(`distributed[${i}].to`, 'a load along the shaft ends after it starts')]),
    ]),
  ];
}

function supportIssues({ supports }: Shaft): readonly Issue[] {
  const twice = supports.flatMap(({ at }, i) =>
    supports.slice(0, i).some((other) => Math.abs(other.at - at) <= SAME_PLACE)
      ? [conflict(`supports[${i}].at`, 'two supports at one place; make them one')]
      : [],
  );
  if (twice.length > 0) return twice;
  const isHeld = supports.length >= 2 || supports.some((support) => support.clamped === true);
  return isHeld
    ? []
    : [conflict('supports', 'the shaft is not held: it takes two bearings, or one support that is clamped')];
}

const conflict = (path: string, reason: string): Issue => ({ code: 'conflict', path, reason });

const edge = (length: number): number => Number((length * 1000).toPrecision(12));
