import { loopBounds, type Point } from '../../geometry/index.ts';
import { type FlatPattern, type Opening, openingEnds, openingLoop } from '../../plates/index.ts';
import type {
  TemplateCheck,
  TemplateCircle,
  TemplateJob,
  TemplateLine,
  TemplateLoop,
} from '../templateJob.ts';
import { degreesText, words } from './context.ts';
import { handText, sizeText, stepsText } from './plateWords.ts';

/** Checks nearer than this to another are the same [m]. */
const SAME = 1e-4;

/** A full-size template of each plate, cut lines as the shop cuts them. */
export const plateTemplateJobs = (patterns: readonly FlatPattern[]): readonly TemplateJob[] =>
  patterns.map((pattern) => ({
    id: `template-plate-${pattern.id}`,
    title: `Plate, ${words(pattern.id)}`,
    hand: pattern.pair ? 'mirror' : handOf(pattern),
    pieces: [
      {
        name: words(pattern.id),
        loops: [
          { loop: pattern.outline, pen: 'cut' },
          ...pattern.windows.map((loop): TemplateLoop => ({ loop, pen: 'cut' })),
          ...pattern.openings.flatMap(slotLoops),
        ],
        circles: [...pattern.openings.flatMap(circles), ...pattern.oldHoles.map(oldHole)],
        lines: [...pattern.bends.map(bendLine), ...pattern.punches.flatMap(({ at }) => cross(at))],
        labels: [],
        arrows: pattern.up
          ? [
              {
                at: pattern.centroid,
                direction: Math.atan2(pattern.up.direction.y, pattern.up.direction.x),
                text: pattern.up.says,
              },
            ]
          : [],
      },
    ],
    checks: checksOf(pattern),
    notes: [
      `${handText(pattern)}, ${words(pattern.material)} ${sizeText(pattern.thickness)} mm thick.`,
      ...steps(pattern),
      ...pattern.notes,
    ],
  }));

/** A single plate that stands on one side is of that hand. */
function handOf({ placed }: FlatPattern): TemplateJob['hand'] {
  const hand = placed.length === 1 ? placed[0]!.hand : 'center';
  return hand === 'center' ? 'none' : hand;
}

/** A slot that is cut has its cut line; one that is drilled and sawn has the line to file to. */
function slotLoops(opening: Opening): readonly TemplateLoop[] {
  if (!((opening.travel ?? 0) > 0)) return [];
  const { cutAs } = opening;
  if (cutAs.as === 'punch') return [{ loop: openingLoop(opening), pen: 'mark' }];
  if (cutAs.as === 'full') return [{ loop: openingLoop(opening), pen: 'cut' }];
  return [
    { loop: openingLoop(opening, cutAs.diameter), pen: 'cut' },
    { loop: openingLoop(opening), pen: 'mark' },
  ];
}

function circles(opening: Opening): readonly TemplateCircle[] {
  const label = labelOf(opening);
  if ((opening.travel ?? 0) > 0)
    return openingEnds(opening).map((center, i) => ({
      center,
      diameter: opening.cutAs.as === 'undersize' ? opening.cutAs.diameter : opening.diameter,
      pen: 'mark',
      ...(i === 0 ? { label } : {}),
    }));
  const { center, cutAs, diameter } = opening;
  if (cutAs.as === 'full') return [{ center, diameter, pen: 'cut', label }];
  if (cutAs.as === 'punch') return [{ center, diameter, pen: 'mark', label }];
  return [
    { center, diameter: cutAs.diameter, pen: 'cut', label },
    { center, diameter, pen: 'mark' },
  ];
}

const labelOf = (opening: Opening): string => {
  const what = (opening.travel ?? 0) > 0 ? 'slot' : 'Ø';
  const thread = opening.thread === undefined ? '' : `, tap ${opening.thread}`;
  const cut = opening.cutAs.as === 'undersize' ? `cut ${sizeText(opening.cutAs.diameter)}, finish ` : '';
  return `${cut}${what} ${sizeText(opening.diameter)}${thread}`;
};

const oldHole = (hole: FlatPattern['oldHoles'][number]): TemplateCircle => ({
  center: hole.center,
  diameter: hole.diameter,
  pen: 'hidden',
  label: 'hole that is there',
});

const bendLine = (bend: FlatPattern['bends'][number]): TemplateLine => ({
  from: bend.from,
  to: bend.to,
  pen: 'bend',
  label: `bend ${bend.direction} ${degreesText(bend.angle, 0)}`,
});

const CROSS = 4e-3;

const cross = (at: Point): readonly TemplateLine[] => [
  { from: { x: at.x - CROSS, y: at.y }, to: { x: at.x + CROSS, y: at.y }, pen: 'mark' },
  { from: { x: at.x, y: at.y - CROSS }, to: { x: at.x, y: at.y + CROSS }, pen: 'mark' },
];

/** How each kind of opening is made, once. */
function steps(pattern: FlatPattern): readonly string[] {
  const lines = pattern.openings.map((opening) => `${labelOf(opening)}: ${stepsText(opening.steps)}.`);
  return [...new Set(lines)];
}

/**
 * The plate's own checks, and the longest lengths that can be taken on it: along, across and corner to corner. A length
 * over the whole plate crosses every seam that the sheet is pasted at.
 */
function checksOf(pattern: FlatPattern): readonly TemplateCheck[] {
  const { outline } = pattern;
  const box = loopBounds(outline);
  const nearest = (x: number, y: number): Point =>
    outline.reduce((best, p) =>
      Math.hypot(p.x - x, p.y - y) < Math.hypot(best.x - x, best.y - y) ? p : best,
    );
  const [lowLeft, highRight] = [nearest(box.minX, box.minY), nearest(box.maxX, box.maxY)];
  const [lowRight, highLeft] = [nearest(box.maxX, box.minY), nearest(box.minX, box.maxY)];
  const own: readonly TemplateCheck[] = [
    ...pattern.checks.map(({ name, from, to }) => ({ name: words(name), from, to })),
    { name: 'outline, corner to corner', from: point(lowLeft), to: point(highRight) },
    { name: 'outline, other corners', from: point(lowRight), to: point(highLeft) },
  ];
  return own.filter(
    (check, i) =>
      distance(check.from, check.to) > 10 * SAME &&
      !own
        .slice(0, i)
        .some((before) => same(before, check) || same(before, { ...check, from: check.to, to: check.from })),
  );
}

const point = ({ x, y }: Point): Point => ({ x, y });

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

const same = (a: TemplateCheck, b: Pick<TemplateCheck, 'from' | 'to'>): boolean =>
  distance(a.from, b.from) < SAME && distance(a.to, b.to) < SAME;
