import type { PlacedTube, PlacedTubeEnd } from '../../bike/index.ts';
import { type WrapTemplate, wrapTemplate } from '../../geometry/index.ts';
import type { TemplateJob, TemplateLine } from '../templateJob.ts';
import { degreesText, words } from './context.ts';
import { sizeText } from './plateWords.ts';
import { referenceText } from './tubeWords.ts';

/** Printing paper of 80 g/m² is about 0.1 mm thick [m]. @source practice */
const PAPER = 1e-4;
/** Paper below the shortest wall [m]. */
const MARGIN = 25e-3;
const STEP = (2 * Math.PI) / 180;
const TURN = 2 * Math.PI;

/**
 * A full-size paper to wrap round each coped end; of a mirrored pair one, the other end takes it turned over. Its two
 * edges meet on the tube's reference line: the inside of the first bend, or the upper side of a straight tube.
 */
export const tubeWrapJobs = (tubes: readonly PlacedTube[]): readonly TemplateJob[] =>
  tubes
    .filter((tube) => tube.hand !== 'right')
    .flatMap((tube) =>
      tube.ends.flatMap((end, i) => {
        const job = wrapJob(tube, end, i === 0 ? 'start' : 'end');
        return job ? [job] : [];
      }),
    );

function wrapJob(tube: PlacedTube, end: PlacedTubeEnd, which: 'start' | 'end'): TemplateJob | undefined {
  const { angle, offset = 0, trunkOutside, clock = 0 } = end;
  if (end.joint !== 'cope' || angle === undefined || trunkOutside === undefined) return undefined;
  const joint = {
    branchRadius: tube.outside / 2,
    wall: tube.wall,
    trunkRadius: trunkOutside / 2,
    angle,
    offset,
  };
  const template = wrapTemplate({
    joint,
    line: 'controlling',
    paperThickness: PAPER,
    margin: MARGIN,
    // φ = 0 is the heel, which stands at `clock` from the reference; so the reference is at −clock.
    seam: -clock,
    step: STEP,
  });
  if (!template.ok) return undefined;
  return jobOf(tube, end, which, template.value);
}

function jobOf(
  tube: PlacedTube,
  end: PlacedTubeEnd,
  which: 'start' | 'end',
  wrap: WrapTemplate,
): TemplateJob {
  const onto = words(end.onto ?? '');
  const name = `${words(tube.entry)}, ${which === 'start' ? 'START' : 'other end'}`;
  return {
    id: `template-cope-${tube.entry}-${which}`,
    title: `Cope of ${name} onto ${onto}`,
    hand: tube.hand === 'left' ? 'mirror' : 'none',
    pieces: [
      {
        name,
        loops: [{ loop: wrap.outline, pen: 'cut' }],
        circles: [],
        lines: alongLines(wrap),
        labels: [{ at: { x: 0.25 * wrap.width, y: 5e-3 }, text: name }],
        arrows: [{ at: { x: 0.5 * wrap.width, y: 14e-3 }, direction: Math.PI / 2, text: `to ${onto}` }],
      },
    ],
    checks: [
      { name: 'round the tube', from: { x: 0, y: 0 }, to: { x: wrap.width, y: 0 } },
      { name: 'along the edge', from: { x: 0, y: 0 }, to: { x: 0, y: edgeHeight(wrap) } },
      { name: 'corner to corner', from: { x: wrap.width, y: 0 }, to: { x: 0, y: edgeHeight(wrap) } },
    ],
    notes: [
      `Tube Ø ${sizeText(tube.outside)} × ${sizeText(tube.wall)} mm; joint ${degreesText(end.angle ?? 0)} to ${onto}, Ø ${sizeText(end.trunkOutside ?? 0)} mm.`,
      `Wrap it round the tube, print outward, lower edge square: its edges meet on the ${referenceText(tube)}.`,
      ...(end.leaveLong > 0
        ? [
            `The tube is left ${sizeText(end.leaveLong)} mm long here: trim at fit-up before the cut is final.`,
          ]
        : []),
    ],
  };
}

const edgeHeight = (wrap: WrapTemplate): number => wrap.outline.at(-1)?.y ?? wrap.height;

/** Heel, sides and crotch up to the cut. */
function alongLines(wrap: WrapTemplate): readonly TemplateLine[] {
  const names = ['heel', 'side', 'crotch', 'side'];
  return wrap.marks.flatMap((mark, i): readonly TemplateLine[] =>
    mark.x > 1e-6 && mark.x < (wrap.width * (TURN - 1e-6)) / TURN
      ? [{ from: { x: mark.x, y: 0 }, to: { x: mark.x, y: mark.y }, pen: 'mark', label: names[i]! }]
      : [],
  );
}
