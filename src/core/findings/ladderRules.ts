import type { Bike, ChainLine, TireGap } from '../bike/index.ts';
import type { Finding } from './finding.ts';
import { say, sayLength, sayList } from './words.ts';

/** Chain lines and the room beside the tires. */
export function ladderFindings(bike: Bike): readonly Finding[] {
  return [...bike.ladder.lines.flatMap(lineFindings), ...bike.ladder.gaps.flatMap(gapFindings)];
}

function lineFindings(line: ChainLine): Finding[] {
  if (line.within) return [];
  const free = line.options.filter((option) => option.hindrance === undefined);
  const [best] = free;
  const blocked = line.options.filter((option) => option.hindrance !== undefined);
  return [
    {
      id: `chain-line.offset:${line.drive}`,
      severity: 'stop',
      question: 'together',
      part: line.drive,
      what: `The ${line.kind === 'chain' ? 'sprockets' : 'sheaves'} of drive "${line.drive}" are ${sayLength(Math.abs(line.offset))} out of line (${say(Math.abs(line.angle), 'angle', 0.01)}).`,
      value: Math.abs(line.offset),
      limit: line.limit,
      margin: line.limit - Math.abs(line.offset),
      kind: 'length',
      why:
        line.kind === 'chain'
          ? 'A chain that runs askew wears its plates and comes off.'
          : 'A belt that runs askew frays and runs hot.',
      remedy: best
        ? `Make spacer "${best.item}" of stack "${best.stack}" ${sayLength(best.length)} long (${best.change > 0 ? '+' : '−'}${sayLength(Math.abs(best.change))}).`
        : `No spacer can take it: ${sayList(blocked.map((option) => `${option.item} (${option.hindrance})`))}. Move the engine face or the sprocket plane.`,
      source: { key: 'practice', where: 'sprockets in line within 1 mm to 1 m of center distance' },
    },
  ];
}

function gapFindings(gap: TireGap): Finding[] {
  if (gap.within) return [];
  return [
    {
      id: `tire-gap:${gap.against}`,
      severity: gap.gap <= 0 ? 'stop' : 'caution',
      question: 'together',
      part: gap.against,
      what:
        gap.gap <= 0
          ? `The tire runs ${sayLength(-gap.gap)} into ${gap.against}.`
          : `Only ${sayLength(gap.gap)} between the tire, grown at speed, and ${gap.against}.`,
      value: gap.gap,
      limit: gap.limit,
      margin: gap.gap - gap.limit,
      kind: 'length',
      why: 'A tire that touches cuts through or locks.',
      remedy: 'Move the sprocket plane out, a narrower tire, or more room in the frame.',
      source: { key: 'practice', where: 'tire to chain 5 mm beside growth' },
    },
  ];
}
