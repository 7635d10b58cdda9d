import { type CutFile, dxfOfPattern, svgOfPattern, withKerf } from '../drawings/index.ts';
import { type FlatPattern, type Opening, openingLoop } from '../plates/index.ts';
import { describeIssue, type Issue } from '../quantity/index.ts';

/**
 * A plate as its cutter needs it: what is cut full or under size, what is only punched, where it bends. Cut lines are
 * what the operation can cut, as on the template; the outline that a hole or slot is opened to afterwards is a mark.
 * Openings that are drilled are punch marks, never outlines.
 */
export function cutFileOf(pattern: FlatPattern): CutFile {
  const cut = pattern.openings.filter((opening) => opening.cutAs.as !== 'punch');
  const punched = pattern.openings.filter((opening) => opening.cutAs.as === 'punch');
  const slots = cut.filter((opening) => opening.travel !== undefined);
  const round = cut.filter((opening) => opening.travel === undefined);
  return {
    id: pattern.id,
    name: pattern.title,
    outline: pattern.outline,
    openings: [...slots.map((slot) => openingLoop(slot, cutDiameter(slot))), ...pattern.windows],
    circles: round.map((opening) => ({ center: opening.center, diameter: cutDiameter(opening) })),
    marks: [
      ...punched.flatMap(punchMarks),
      ...pattern.openings
        .filter(isOpenedLater)
        .map((one) => ({ kind: 'loop' as const, loop: openingLoop(one) })),
      ...pattern.punches.map((punch) => ({ kind: 'punch' as const, at: punch.at })),
    ],
    bends: pattern.bends.map((bend) => ({
      from: bend.from,
      to: bend.to,
      angle: bend.direction === 'up' ? bend.angle : -bend.angle,
    })),
  };
}

const cutDiameter = (opening: Opening): number =>
  opening.cutAs.as === 'undersize' ? opening.cutAs.diameter : opening.diameter;

/** Openings that are cut smaller, and slots sawn between drilled ends: the cutter leaves metal to a line. */
const isOpenedLater = ({ cutAs, travel = 0 }: Opening): boolean =>
  cutAs.as === 'undersize' || (cutAs.as === 'punch' && travel > 0);

/** A slot that is drilled and sawn by hand is marked at the centers of its two ends. */
function punchMarks(opening: Opening): { readonly kind: 'punch'; readonly at: { x: number; y: number } }[] {
  const half = (opening.travel ?? 0) / 2;
  if (half === 0) return [{ kind: 'punch', at: opening.center }];
  const [c, s] = [Math.cos(opening.direction ?? 0), Math.sin(opening.direction ?? 0)];
  return [-half, half].map((along) => ({
    kind: 'punch' as const,
    at: { x: opening.center.x + along * c, y: opening.center.y + along * s },
  }));
}

/** A DXF and an SVG of a plate; with a kerf, its outlines stand beside the true ones, on their own layer. */
export async function cutFilesOf(
  pattern: FlatPattern,
  kerf: number | undefined,
): Promise<readonly { readonly path: string; readonly text: string }[]> {
  const plain = cutFileOf(pattern);
  const offset = kerf === undefined || kerf <= 0 ? undefined : withKerf(plain, kerf);
  const file = offset?.ok ? offset.value : plain;
  return [
    { path: `cut/${pattern.id}.dxf`, text: await dxfOfPattern(file) },
    { path: `cut/${pattern.id}.svg`, text: svgOfPattern(file) },
    ...(offset && !offset.ok ? [kerfNote(pattern, offset.issues)] : []),
  ];
}

/** A kerf that cannot be drawn is said beside the files, since they look whole without it. */
const kerfNote = (pattern: FlatPattern, issues: readonly Issue[]) => ({
  path: `cut/${pattern.id}-no-kerf.txt`,
  text: `The files of ${pattern.id} hold true sizes only; the kerf was left out:\n${issues.map(describeIssue).join('\n')}\n`,
});
